/**
 * The vocabulary of entries: everything that can be said in the book, one kind each. What follows
 * from it is the fold's.
 */
package spindlebook.entry;
