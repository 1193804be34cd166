/**
 * What rod ends, wheels and tyres do to alignment and to gaps, worked out before they are touched.
 * Signs are those of {@code spindlebook.alignment}.
 */
package spindlebook.parts;
