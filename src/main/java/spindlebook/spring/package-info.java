/**
 * What carries the car, what ends the motion softly, and how long a strap lasts: the formulas.
 *
 * <p>Wheel position in mm, + towards bump; shock length in mm from eye to eye; motion ratio + where
 * bump shortens the shock. Forces in N, + up on the car; rates in N/mm; energy in J; masses in kg;
 * use in hours. Docs: docs/methods-springs.md.
 */
package spindlebook.spring;
