/**
 * Camber, toe, caster, KPI, scrub, trail, track and bump steer of a corner: the formulas.
 *
 * <p>Axes ISO 8855: x forward, y left, z up. Signs: camber + top outward; toe + front edge inward,
 * each wheel by itself; caster + top of the axis rearward; KPI + top inboard; scrub + axis meets
 * the ground inboard of the contact centre; trail + ahead of it; steering + to the left. They are
 * the same on either side of the car, steering apart. Millimetres and radians.
 */
package spindlebook.alignment;
