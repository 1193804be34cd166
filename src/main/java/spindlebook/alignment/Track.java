package spindlebook.alignment;

import spindlebook.uncertainty.Figure;

/**
 * How wide the car stands: hub faces, wheel centres, ground, outside of the tyres.
 *
 * <pre>
 *   centres = hub faces − 2 E cos γ       ground = centres − 2 R sin γ
 *   outside = centres + B cos γ
 * </pre>
 *
 * hub faces from mounting face to mounting face, mm; E offset as it sits (spacer taken off), mm; γ
 * camber (+ top outward), rad, taken as exact; R loaded radius, B tyre's section width, mm. Outside
 * is at hub height. Same wheel and camber on both sides.
 *
 * <p>Source: derived in docs/methods-alignment.md. Worked example: 1600 mm between the hub faces,
 * offset −12 mm, no camber: 1624 mm; with a tyre 317.5 mm wide 1941.5 mm outside. Leaning in by 1°
 * on a radius of 400 mm: 1623.996 mm, 1637.958 mm on the ground.
 */
public record Track(Figure hubFacesMm, Figure centresMm, Figure groundMm, Figure outsideMm) {

  public static Track fromHubFaces(
      Figure hubFacesMm,
      double offsetMm,
      double camberRad,
      Figure loadedRadiusMm,
      Figure sectionWidthMm) {
    return from(
        hubFacesMm,
        hubFacesMm.plus(-2 * offsetMm * Math.cos(camberRad)),
        camberRad,
        loadedRadiusMm,
        sectionWidthMm);
  }

  /** Measured over the outsides of the tyres at hub height. */
  public static Track fromOutside(
      Figure outsideMm,
      double offsetMm,
      double camberRad,
      Figure loadedRadiusMm,
      Figure sectionWidthMm) {
    Figure centres = outsideMm.minus(sectionWidthMm.times(Math.cos(camberRad)));
    return from(
        centres.plus(2 * offsetMm * Math.cos(camberRad)),
        centres,
        camberRad,
        loadedRadiusMm,
        sectionWidthMm);
  }

  private static Track from(
      Figure hubFacesMm,
      Figure centresMm,
      double camberRad,
      Figure loadedRadiusMm,
      Figure sectionWidthMm) {
    return new Track(
        hubFacesMm,
        centresMm,
        centresMm.minus(loadedRadiusMm.times(2 * Math.sin(camberRad))),
        centresMm.plus(sectionWidthMm.times(Math.cos(camberRad))));
  }
}
