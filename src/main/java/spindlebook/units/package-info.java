/**
 * Lengths and angles as people type, say and read them: text in, millimetres and radians out, and
 * back.
 */
package spindlebook.units;
