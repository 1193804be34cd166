package spindlebook.parts;

import spindlebook.alignment.ScrubTrail;

/**
 * What another wheel does, before it is bought.
 *
 * <pre>
 *   track     Δ = −2 ΔE cos γ            half track: −ΔE cos γ
 *   height    Δ = ΔE sin γ               wheel's centre, the hub held still
 *   scrub     Δ = −ΔE (cos γ − tan K sin γ)  by the offset
 *               − (cos γ tan K + sin γ) ΔR     by the loaded radius ({@link ScrubTrail})
 *   lips      inner goes inboard by Δ backspacing, outer outboard by Δ front spacing
 * </pre>
 *
 * E offset as it sits (spacer taken off), R loaded radius in the wheel's plane, mm; γ camber, K
 * KPI, rad. On the ground it is the hub that goes down where the centre would rise. Source: derived
 * in docs/methods-alignment.md.
 *
 * <p>Worked example: offset 0 to −25 mm at −1° camber: half track +24.996, centre +0.436 mm.
 */
public record WheelChange(
    double trackMm,
    double centreHeightMm,
    double scrubByOffsetMm,
    double scrubByRadiusMm,
    double innerLipInboardMm,
    double outerLipOutboardMm) {

  public static WheelChange of(
      Wheel from, Wheel to, double radiusChangeMm, double camberRad, double kpiRad) {
    double offset = to.offsetMm() - from.offsetMm();
    double cos = Math.cos(camberRad);
    double sin = Math.sin(camberRad);
    return new WheelChange(
        -2 * offset * cos,
        offset * sin,
        -offset * (cos - Math.tan(kpiRad) * sin),
        ScrubTrail.scrubPerRadius(camberRad, kpiRad) * radiusChangeMm,
        to.backspacingMm() - from.backspacingMm(),
        to.frontSpacingMm() - from.frontSpacingMm());
  }

  /** Both together, + axis meets the ground further inboard. */
  public double scrubMm() {
    return scrubByOffsetMm + scrubByRadiusMm;
  }
}
