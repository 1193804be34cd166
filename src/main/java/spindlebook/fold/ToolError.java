package spindlebook.fold;

import spindlebook.definition.Tool;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Rectangular;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * How far what a tool reads can be trusted: a tape, drill shanks, a dial, an angle finder, turn
 * plates.
 *
 * <pre>  u² = g²/12 + a²/3 + c²/3</pre>
 *
 * <p>Source: JCGM 100:2008, 4.3.7 (rectangular) and F.2.2.1, from memory.
 *
 * <p>Worked examples: a tape to 1/16 in placed to ± 1/32 in: u = √2 · 0.4583 = 0.648 mm. A gauge to
 * 0.1° placed to ± 0.1°, zero unknown within ± 0.2°: u = 0.132°.
 *
 * @param tool its id: one source for all it reads, so that a difference of two readings drops it
 * @param graduation g, u = g/√12, one source for all repeats of the same place, so that repeating
 *     does not narrow it; mm or rad, as all here
 * @param placingHalfWidth a, u = a/√3, new at each reading
 * @param classHalfWidth c, how far it may read long or short, or its zero be off, u = c/√3; 0 where
 *     nobody says, or the zero was found and taken out
 */
public record ToolError(
    String tool, double graduation, double placingHalfWidth, double classHalfWidth) {

  /** It must be a tool for lengths or gaps. */
  public static ToolError ofLengths(Tool tool) {
    return new ToolError(
        tool.tool(),
        tool.graduation().mm(),
        mm(tool.placingHalfWidth()),
        mm(tool.classHalfWidth()));
  }

  /** Of an angle finder; the book does not say how far its zero may be off. */
  public static ToolError ofAngles(Tool tool, double zeroHalfWidthRad) {
    TypedAngle placing = tool.placingHalfWidthAngle();
    return new ToolError(
        tool.tool(),
        tool.graduationAngle().rad(),
        placing == null ? 0 : placing.rad(),
        zeroHalfWidthRad);
  }

  /**
   * What it read.
   *
   * @param readingId names this reading's placing
   * @param placeId shared by repeats of the same place
   */
  public Figure read(double read, String readingId, String placeId) {
    return read(read, readingId, placeId, SourceKind.PLACING);
  }

  /**
   * @param placing MARK where the one reading is used in many figures: repeating those does not
   *     narrow it
   */
  Figure read(double read, String readingId, String placeId, SourceKind placing) {
    return Figure.of(
            read, new Source(placeId, SourceKind.RESOLUTION), Rectangular.resolutionU(graduation))
        .withSource(new Source(readingId, placing), Rectangular.u(placingHalfWidth))
        .withSource(new Source(tool, SourceKind.TOOL), Rectangular.u(classHalfWidth));
  }

  /**
   * A drill that goes and the next that does not: the step between them, and what the set is off.
   */
  static ToolError between(Tool tool, TypedLength go, TypedLength noGo) {
    double stepMm = Math.abs(noGo.mm() - go.mm());
    return new ToolError(tool.tool(), stepMm, 0, mm(tool.classHalfWidth()));
  }

  private static double mm(TypedLength length) {
    return length == null ? 0 : length.mm();
  }
}
