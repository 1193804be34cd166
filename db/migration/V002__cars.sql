-- The cars of the book, for the list a person starts from.

create table car (
  key   varchar(80) primary key,
  name  varchar not null,     -- as it is called now
  n     bigint not null       -- the entry that brought it in
);
