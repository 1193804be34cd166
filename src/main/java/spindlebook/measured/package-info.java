/**
 * The alignment of a corner as it was measured, with its doubt, against the owner's targets. Signs
 * are those of {@code spindlebook.alignment}.
 */
package spindlebook.measured;
