package spindlebook.parts;

import java.util.EnumMap;
import java.util.Map;
import spindlebook.alignment.ScrubTrail;
import spindlebook.uncertainty.Figure;

/**
 * A wheel and tyre tried on paper against what was measured around the present ones.
 *
 * <pre>
 *   barrel         + Δ rim diameter / 2           spokes      + Δ spokes' back + Δ spacer
 *   inner lip      − Δ backspacing as it sits     tread       − Δ free radius
 *   tyre inboard   − Δ (B/2 + E)                  outboard    − Δ (B/2 − E)
 *   scrub          as {@link WheelChange}, ΔR of the loaded radii
 * </pre>
 *
 * added to the gap measured, mm; E offset as it sits, B section width. Assumes a barrel as thick
 * and a drop centre as placed as the present one's: when in doubt measure the new wheel itself.
 * Wheel straight; at lock the tyre's gaps change by more or less than this, so read them again once
 * fitted. Source: derived in docs/methods-alignment.md.
 *
 * <p>Worked example: 15 x 8, backspacing 4 1/2 in, to 17 x 9, 4 1/2 in, no spacer: barrel gap +
 * 25.4 mm, inner lip 0, offset 0 to −12.7 mm, track + 25.4 mm.
 *
 * @param gapsMm the gaps as they will be, for those that were measured
 * @param scrubMm change, + axis meets the ground further inboard
 */
public record WheelOnPaper(Map<WheelGap, Figure> gapsMm, WheelChange change, Figure scrubMm) {
  public static WheelOnPaper tried(
      MountedWheel now,
      MountedWheel then,
      Map<WheelGap, Figure> measuredMm,
      double camberRad,
      double kpiRad) {
    Map<WheelGap, Figure> gaps = new EnumMap<>(WheelGap.class);
    measuredMm.forEach((gap, mm) -> gaps.put(gap, mm.plus(room(gap, now, then))));
    Figure radius = then.tyre().loadedRadiusMm().minus(now.tyre().loadedRadiusMm());
    WheelChange byWheel = WheelChange.of(now.asItSits(), then.asItSits(), 0, camberRad, kpiRad);
    Figure scrub =
        radius.times(ScrubTrail.scrubPerRadius(camberRad, kpiRad)).plus(byWheel.scrubMm());
    WheelChange change =
        WheelChange.of(now.asItSits(), then.asItSits(), radius.value(), camberRad, kpiRad);
    return new WheelOnPaper(gaps, change, scrub);
  }

  private static Figure room(WheelGap gap, MountedWheel now, MountedWheel then) {
    Wheel a = now.asItSits();
    Wheel b = then.asItSits();
    double offsetMm = b.offsetMm() - a.offsetMm();
    Figure halfWidth = then.tyre().sectionWidthMm().minus(now.tyre().sectionWidthMm()).times(0.5);
    return switch (gap) {
      case BARREL -> Figure.exact((b.rimDiameterMm() - a.rimDiameterMm()) / 2);
      case SPOKES ->
          Figure.exact(then.spokeBackMm() - now.spokeBackMm() + then.spacerMm() - now.spacerMm());
      case INNER_LIP -> Figure.exact(a.backspacingMm() - b.backspacingMm());
      case TYRE_INBOARD -> halfWidth.plus(offsetMm).times(-1);
      case TYRE_OUTBOARD -> halfWidth.plus(-offsetMm).times(-1);
      case TREAD -> now.tyre().freeRadiusMm().minus(then.tyre().freeRadiusMm());
    };
  }
}
