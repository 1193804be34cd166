/**
 * What the readings say about the travel of a corner: curves against wheel position, where a rule
 * is met, and what a change at the wheel is at the strap.
 *
 * <p>Wheel position is in millimetres, + towards bump. Nothing here reads beyond the readings
 * unless its name says so.
 */
package spindlebook.travel;
