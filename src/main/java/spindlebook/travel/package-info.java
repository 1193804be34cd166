/**
 * What the readings say about the travel of a corner: where a rule is met, what each end is limited
 * by, and what a change at the wheel is at the strap.
 *
 * <p>Wheel position is in millimetres, + towards bump. Nothing here reads beyond the readings
 * unless its name says so.
 */
package spindlebook.travel;
