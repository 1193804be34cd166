-- The book's entries, one row a line of data/book.jsonl. This whole database is an index of that
-- file: it can be deleted at any time and is built anew from it.

create table entry (
  n       bigint primary key,                  -- position in the book
  key     varchar(80) not null unique,         -- made by the sender, the thing's id for ever
  kind    varchar(40) not null,
  parent  varchar(80),                         -- key of the entry it hangs on
  target  varchar(80),                         -- of a correction or an answer: what it is about
  car     varchar(80),                         -- the car's key, through the parents; null if none is known
  corner  varchar(80),                         -- the corner's key, likewise
  at      timestamp(3) with time zone not null,
  claimed timestamp(9) with time zone,         -- by the sender's clock: describes only
  who     varchar not null,
  device  varchar,
  line    varchar not null                     -- the line as JSON
);

create index entry_of_car on entry (car, n);
create index entry_of_corner on entry (corner, n);
create index entry_of_car_by_kind on entry (car, kind, n);
create index entry_by_kind on entry (kind, n);
create index entry_below on entry (parent, n);
create index entry_about on entry (target, n);

-- What of the book the rows above stand for. One row, written in the same transaction as they are.
create table meta (
  id      int primary key check (id = 1),
  entries bigint not null,
  n       bigint not null,
  hash    varchar(64) not null                 -- SHA-256 of the line of entry n
);
