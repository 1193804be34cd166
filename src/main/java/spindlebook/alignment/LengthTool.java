package spindlebook.alignment;

import java.util.LinkedHashMap;
import java.util.Map;
import spindlebook.corner.Tool;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.TypedLength;

/**
 * A tape, rule, dial or laser spot, and how far it can be trusted.
 *
 * <pre>  u² = g²/12 + a²/3 + c²/3</pre>
 *
 * <p>Source: JCGM 100:2008, 4.3.7 (rectangular), from memory.
 *
 * <p>Worked example: a tape to 1/16 in placed to ± 1/32 in: u = √2 · 0.4583 = 0.648 mm.
 *
 * @param tool its id: one source for all it reads, so that a difference of two readings drops it
 * @param graduationMm g, u = g/√12, one source for repeats of the same place
 * @param placingHalfWidthMm a, u = a/√3, new at each reading
 * @param classHalfWidthMm how far it may read long or short, u = a/√3; 0 where nobody says
 */
public record LengthTool(
    String tool, double graduationMm, double placingHalfWidthMm, double classHalfWidthMm) {

  /** The book's own tool. It must be one for lengths or gaps. */
  public static LengthTool of(Tool tool) {
    return new LengthTool(
        tool.tool(),
        tool.graduation().mm(),
        mm(tool.placingHalfWidth()),
        mm(tool.classHalfWidth()));
  }

  /**
   * What it read.
   *
   * @param readingId names this reading's placing
   * @param placeId shared by repeats of the same place
   */
  public Figure read(double readMm, String readingId, String placeId) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    parts.put(new Source(placeId, SourceKind.RESOLUTION), Rectangular.resolutionU(graduationMm));
    parts.put(new Source(readingId, SourceKind.PLACING), Rectangular.u(placingHalfWidthMm));
    parts.put(new Source(tool, SourceKind.TOOL), Rectangular.u(classHalfWidthMm));
    return Figure.of(readMm, parts);
  }

  private static double mm(TypedLength length) {
    return length == null ? 0 : length.mm();
  }
}
