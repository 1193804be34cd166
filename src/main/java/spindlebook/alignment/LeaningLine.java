package spindlebook.alignment;

import java.util.List;
import spindlebook.entry.LineSide;
import spindlebook.uncertainty.Figure;

/**
 * How far a string along the car leans towards its middle, so that toe read from it need not wait
 * until the string runs straight.
 *
 * <pre>
 *   places inboard of the line    sin δ = (rear − front − wider) / apart
 *   places outboard of it         sin δ = (front − rear − wider) / apart
 * </pre>
 *
 * <p>δ rad, + the line's front end nearer to the car's middle; it is added to the toe read from the
 * line ({@link ToeReading}). front, rear: from the line to a place of the car at a front and a rear
 * station, square to the line, mm, > 0, both places on the same side of it: hubs lie inboard of a
 * line outboard of the wheel and outboard of one inboard of it, where marks on the frame still lie
 * inboard. apart: from station to station along the car, mm, > 0; wider: how much further from the
 * car's middle the front place stands than the rear one, mm, − where it stands further in. Hubs of
 * one side do: wider is then half of what the front hubs stand wider than the rear ones.
 *
 * <p>Assumes the line level and the places where they are said to be: 1 mm in 2.8 m of wider is
 * 0.02° of toe. What both distances share (the tape) cancels. A difference of more than apart is no
 * angle: IllegalArgumentException. Source: plane geometry; derived in docs/methods-alignment.md.
 *
 * <p>Worked example: string outside, 120 mm to the front hub, 126 mm to the rear one, 2800 mm
 * apart: leans in by 0.1228° where both hubs stand equally far out; 10 mm wider in front it leans
 * out by 0.0819°. String inside, hubs outboard of it, 126 mm to the front one and 120 to the rear:
 * it leans in by 0.1228°.
 */
public final class LeaningLine {
  private LeaningLine() {}

  /**
   * @param places on which side of the line they lie
   */
  public static Figure inwardRad(
      LineSide places, Figure frontMm, Figure rearMm, Figure apartMm, Figure frontWiderMm) {
    int sign = places == LineSide.INBOARD ? 1 : -1;
    return Toe.asin(
        List.of(frontMm, rearMm, apartMm, frontWiderMm), v -> (sign * (v[1] - v[0]) - v[3]) / v[2]);
  }
}
