/**
 * A corner as rigid links: where its joints, wheel, shock and strap stand at a height and a rack
 * position, and which joints agree with what was read of it.
 *
 * <p>Axes ISO 8855, fixed in the body: x forward, y left, z up. x is 0 at the design wheel centre,
 * y on the car's centre line, z on the design ground; the joints are given as they stand there.
 * Millimetres and radians; what is written for people is in degrees and says so.
 *
 * <p>Height: the wheel centre's z less the design one's, + towards bump, <em>at the rack position
 * given</em>. The book's heights are straight ahead: what is steered at one jack setting shares the
 * lower arm's angle with it ({@link Linkage#steered}). Rack: how far the tie rod's inner end is
 * moved along +y, to the car's left on either side of it; a rear corner's toe link stays at 0.
 *
 * <p>Signs, the same on either side: camber + top outward; toe + front edge inward, this wheel
 * alone; caster + top of the kingpin rearward; KPI + its top inboard; scrub + kingpin meets the
 * ground inboard of the contact centre; trail + ahead of it; half track + outward, wheelbase +
 * forward, from the design; arms' angles + hanging down from the design. Motion ratio: how much
 * shock or strap is lost for each mm of height, + where bump shortens it. Only heading and
 * inclination (ISO) change sign with the side. Scrub and trail are along the tyre's axes, {@code
 * body} ones along the car's.
 *
 * <p>The knuckle is named by its joints: L lower, U upper ball joint, TO the tie rod's outer end;
 * the axle's spin axis points outboard.
 */
package spindlebook.linkage;
