package spindlebook.alignment;

import java.util.LinkedHashMap;
import java.util.Map;
import spindlebook.corner.Tool;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/**
 * An angle finder, a camber gauge or a pair of turn plates, and how far it can be trusted.
 *
 * <pre>  u² = g²/12 + a²/3 + z²/3</pre>
 *
 * <p>Source: JCGM 100:2008, 4.3.7 (rectangular), from memory.
 *
 * <p>Worked example: a gauge to 0.1° placed to ± 0.1°, zero unknown within ± 0.2°: u = 0.132°.
 *
 * @param tool its id: its zero error is one source for all it reads
 * @param graduationRad g, u = g/√12, one source for repeats of the same place
 * @param placingHalfWidthRad a, u = a/√3, new at each reading
 * @param zeroHalfWidthRad how far its zero may be off, u = a/√3; 0 where it was found and taken out
 */
public record AngleTool(
    String tool, double graduationRad, double placingHalfWidthRad, double zeroHalfWidthRad) {

  /** The book's own angle finder; the book does not say how far its zero may be off. */
  public static AngleTool of(Tool tool, double zeroHalfWidthRad) {
    double placing = tool.placingHalfWidthAngle() == null ? 0 : tool.placingHalfWidthAngle().rad();
    return new AngleTool(tool.tool(), tool.graduationAngle().rad(), placing, zeroHalfWidthRad);
  }

  /**
   * What it read.
   *
   * @param readingId names this reading's placing
   * @param placeId shared by repeats of the same place
   */
  public Figure read(double readRad, String readingId, String placeId) {
    Map<Source, Double> parts = new LinkedHashMap<>();
    parts.put(new Source(placeId, SourceKind.RESOLUTION), Rectangular.resolutionU(graduationRad));
    parts.put(new Source(readingId, SourceKind.PLACING), Rectangular.u(placingHalfWidthRad));
    parts.put(new Source(tool, SourceKind.TOOL), Rectangular.u(zeroHalfWidthRad));
    return Figure.of(readRad, parts);
  }
}
