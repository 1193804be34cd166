-- A table as a later version of the program would add it.
create table shelf (key varchar(80) primary key);
