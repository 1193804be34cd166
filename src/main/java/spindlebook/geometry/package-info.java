/**
 * Pages of a corner's linkage: its joints as laid out and drawn, whether they agree with what was
 * read, the corner as it moves, and changes of it tried first.
 */
package spindlebook.geometry;
