package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** Nodes as short as a test wants to write them. Numbers in mm. */
public final class Readings {
  public static final Source MARK = new Source("frame mark", SourceKind.MARK);
  public static final Source CALIPER = new Source("caliper", SourceKind.TOOL);

  private Readings() {}

  public static Node exact(double positionMm, double value) {
    return node(Figure.exact(positionMm), Figure.exact(value), Bound.EXACT);
  }

  /** With placing of its own, u in position and in value. */
  public static Node read(double positionMm, double positionU, double value, double valueU) {
    return node(
        own("height " + positionMm, positionMm, positionU),
        own("gap " + positionMm, value, valueU),
        Bound.EXACT);
  }

  public static Node wellClear(double positionMm, double atLeast) {
    return node(Figure.exact(positionMm), Figure.exact(atLeast), Bound.AT_LEAST);
  }

  public static Node touches(double positionMm) {
    return node(Figure.exact(positionMm), Figure.exact(0), Bound.AT_MOST);
  }

  public static Node node(Figure positionMm, Figure value, Bound bound) {
    return new Node(positionMm, value, bound, List.of("@" + positionMm.value()));
  }

  public static List<Node> exact(double[] positionsMm, double[] values) {
    List<Node> nodes = new ArrayList<>();
    for (int i = 0; i < values.length; i++) {
      nodes.add(exact(positionsMm[i], values[i]));
    }
    return nodes;
  }

  public static Figure own(String id, double value, double u) {
    return Figure.of(value, new Source(id, SourceKind.PLACING), u);
  }
}
