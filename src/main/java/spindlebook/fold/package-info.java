/**
 * What the entries come to: {@code CarBook} and its {@code Card}s, by a fold that gives the same
 * one by one, from scratch, and after a rebuild. A {@code Noted} is an entry as it came, {@code
 * Written} the same with what stands under its key now, {@code SeenX} what the card knows of an X.
 */
package spindlebook.fold;
