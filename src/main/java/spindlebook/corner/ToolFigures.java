package spindlebook.corner;

import java.util.LinkedHashMap;
import java.util.Map;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * What was typed, as a figure with its sources: the tool's graduation (g/√12, one source for all
 * repeats of the same place, so that repeating does not narrow it), holding the tool (a/√3, new
 * each time) and the tool's class (a/√3, one source for everything it reads). JCGM 100:2008, 4.3.7
 * and F.2.2.1 (from memory).
 */
final class ToolFigures {
  private ToolFigures() {}

  /**
   * @param readingId its own id: names the placing
   * @param placeId shared by repeats of the same place
   */
  static Figure length(TypedLength length, Tool tool, String readingId, String placeId) {
    return length(length, tool, readingId, placeId, SourceKind.PLACING);
  }

  /**
   * @param placing MARK where the one reading is used in many figures: repeating those does not
   *     narrow it
   */
  static Figure length(
      TypedLength length, Tool tool, String readingId, String placeId, SourceKind placing) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    add(parts, SourceKind.RESOLUTION, placeId, Rectangular.resolutionU(tool.graduation().mm()));
    add(parts, placing, readingId, halfWidth(tool.placingHalfWidth()));
    add(parts, SourceKind.TOOL, tool.tool(), halfWidth(tool.classHalfWidth()));
    return Figure.of(length.mm(), parts);
  }

  /** A drill that goes and the next that does not: the middle, as sure as the step between them. */
  static Figure between(TypedLength go, TypedLength noGo, String placeId) {
    double middleMm = (go.mm() + noGo.mm()) / 2;
    double halfMm = Math.abs(noGo.mm() - go.mm()) / 2;
    return Figure.of(
        middleMm, Map.of(new Source(placeId, SourceKind.RESOLUTION), Rectangular.u(halfMm)));
  }

  static Figure angle(TypedAngle angle, Tool tool, String readingId, String placeId) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    add(
        parts,
        SourceKind.RESOLUTION,
        placeId,
        Rectangular.resolutionU(tool.graduationAngle().rad()));
    TypedAngle placing = tool.placingHalfWidthAngle();
    add(parts, SourceKind.PLACING, readingId, placing == null ? 0 : Rectangular.u(placing.rad()));
    return Figure.of(angle.rad(), parts);
  }

  private static double halfWidth(TypedLength halfWidth) {
    return halfWidth == null ? 0 : Rectangular.u(halfWidth.mm());
  }

  private static void add(Map<Source, Double> parts, SourceKind kind, String id, double u) {
    if (u > 0) {
      parts.put(new Source(id, kind), u);
    }
  }
}
