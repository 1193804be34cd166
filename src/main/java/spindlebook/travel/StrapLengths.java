package spindlebook.travel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.curve.Bound;
import spindlebook.curve.Node;
import spindlebook.curve.Nodes;
import spindlebook.entry.Joint;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.linkage.CoordinateFigure;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.ModelFigure;
import spindlebook.linkage.Pose;
import spindlebook.uncertainty.Figure;

/**
 * How far the strap's mounts are apart against wheel position: as read, or, where it was read at
 * fewer than two places, as the joints laid out make it, with the doubt of a tape. What was read
 * beats what is modelled.
 *
 * @param modelled whether it is by the linkage
 */
record StrapLengths(List<Node> nodes, boolean modelled) {
  /** Over as much travel as any such corner has; common practice, no source. */
  private static final double LOW_MM = -350;

  private static final double HIGH_MM = 250;
  private static final double STEP_MM = 50;

  static StrapLengths of(Card card, Pairing pairing) {
    List<Node> read = Nodes.merged(card, Quantity.STRAP_LENGTH, pairing);
    CornerJoints joints = CornerJoints.of(card);
    if (read.size() > 1
        || joints.linkage() == null
        || joints.positionMm() == null
        || !joints.at().containsKey(Joint.KU)) {
      return new StrapLengths(read, false);
    }
    return new StrapLengths(card.memo().get("modelled strap", () -> modelled(joints)), true);
  }

  private static List<Node> modelled(CornerJoints joints) {
    List<CoordinateFigure> laidOut =
        joints.coordinates().stream()
            .map(c -> CoordinateFigure.asGiven(c, joints.linkage().joints()))
            .toList();
    List<Node> nodes = new ArrayList<>();
    for (double height = LOW_MM; height <= HIGH_MM; height += STEP_MM) {
      Optional<Figure> length = ModelFigure.of(joints.linkage(), laidOut, Pose::strapMm, height, 0);
      Figure position = joints.positionMm().plus(height);
      length.ifPresent(l -> nodes.add(new Node(position, l, Bound.EXACT, List.of())));
    }
    return nodes;
  }
}
