-- The lines themselves are read from the book's file; the index only tells which they are.

alter table entry drop column line;
