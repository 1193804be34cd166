/**
 * A value against wheel position, as it was read: its points, the curve through them, and what a
 * change at the wheel is at an adjuster. Wheel position is in millimetres, + towards bump.
 */
package spindlebook.curve;
