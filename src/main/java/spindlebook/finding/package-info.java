/**
 * What is known of a corner as one list, and two such lists held against each other: pages, print,
 * comparisons, sign-offs and tables draw from it.
 *
 * <p>{@link spindlebook.finding.Findings#of} gives the list of a corner, {@link
 * spindlebook.finding.Findings#ofEnd} that of one end. Its groups stand in one order: stops, what
 * is held back, margins with what rules each end, limits with what lies in mid-travel, totals,
 * settings, rules, alignment. A {@link spindlebook.finding.Finding} says where on the travel it is
 * ({@code position}), whether it is known as no more than a bound ({@code atLeast}), how it was
 * decided ({@code verdict}), and the keys of the readings that it rests on ({@code readings}), so
 * that a page can show a figure and, a tap away, what it stands on. {@code of} leads back to all
 * the rest: needs, cure, bracket. {@link spindlebook.finding.Beside} holds two lists against each
 * other.
 */
package spindlebook.finding;
