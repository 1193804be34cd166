-- Which entries concern which adjuster, for the book's filter: adjustments, and the answers to and
-- corrections of them.

create table adjustment (
  n         bigint primary key,
  key       varchar(80) not null,   -- of the adjustment itself
  adjuster  varchar(80) not null    -- its short name, the same on the mirror corner
);

create index adjustment_of_adjuster on adjustment (adjuster, n);
create index adjustment_by_key on adjustment (key);
