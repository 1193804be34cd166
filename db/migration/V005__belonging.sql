-- Where an entry belongs comes from the book's own fold; the index keeps the answer alone.

drop index entry_below;
drop index entry_about;
alter table entry drop column parent;
alter table entry drop column target;
