/**
 * What is known of a corner as one list, and two such lists held against each other: pages, print,
 * comparisons, sign-offs and tables draw from it.
 */
package spindlebook.finding;
