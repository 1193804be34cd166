package spindlebook.geometry;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Shown;
import spindlebook.drawing.State;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.SeenJoint;
import spindlebook.fold.Standing;
import spindlebook.geometry.CornerSketch.Scale;
import spindlebook.geometry.CornerSketch.View;
import spindlebook.geometry.CornerSketch.Wheel;
import spindlebook.linkage.CornerJoints;
import spindlebook.linkage.Joints;
import spindlebook.linkage.Vec;
import spindlebook.page.Link;
import spindlebook.page.Posted;

/**
 * A corner's joints: what is there, drawn and listed, and what is missing.
 *
 * @param state what it comes to
 * @param why one sentence, where it does not close
 * @param next what to lay out, or lay out again, next; null with nothing left
 */
public record LinkageView(
    State state,
    String word,
    String why,
    List<Link> about,
    Link next,
    List<CornerSketch> sketches,
    List<Part> parts) {
  private static final double WIDTH = 356;
  private static final double MOST = 250;
  private static final double HALF = 174;

  /**
   * @param open whether something of it is wanted
   */
  public record Part(String name, int there, boolean open, List<Row> rows) {}

  /**
   * A joint in the list of them.
   *
   * @param at as typed; empty while it is missing
   * @param state null where it counts
   */
  public record Row(String key, String name, String at, State state, String href) {}

  static LinkageView of(Card card) {
    CornerJoints joints = CornerJoints.of(card);
    Map<Joint, SeenJoint> seen = new EnumMap<>(Joint.class);
    card.joints().forEach(j -> seen.put(j.place().joint(), j));
    List<Joint> needed = joints.missing().stream().filter(Joint::needed).toList();
    boolean closes = joints.linkage() != null;
    Optional<Joint> next = next(card);
    return new LinkageView(
        closes ? State.CLEAR : joints.refused() != null ? State.IN_DOUBT : State.NOT_MEASURED,
        closes
            ? "joints fit together"
            : joints.refused() != null
                ? "joints do not fit together"
                : Counted.of(needed.size(), "joint") + " of 9 missing",
        joints.refused() != null ? joints.refused() : elsewhere(joints),
        Stream.concat(
                joints.about().stream(), joints.elsewhere().stream().map(j -> j.place().joint()))
            .map(j -> new Link(Capital.of(j.words), href(card, j)))
            .toList(),
        next.map(j -> new Link(Capital.of(j.words), href(card, j))).orElse(null),
        sketches(card),
        List.of(
            part("Arms, tie rod and wheel", Joint.LF, Joint.W, card, seen),
            part("Shock and strap", Joint.SU, Joint.KL, card, seen),
            part("Rod ends and uniballs", Joint.BOLT_L, Joint.STUD_TI, card, seen)));
  }

  private static String elsewhere(CornerJoints joints) {
    return joints.elsewhere().isEmpty()
        ? ""
        : "Laid out with the wheel at another height than the rest, so left out:";
  }

  /** The first that is missing, a fellow of one laid out too, or stale; then the rest. */
  static Optional<Joint> next(Card card) {
    Set<Joint> there =
        card.joints().stream()
            .filter(j -> j.stands().counts())
            .map(j -> j.place().joint())
            .collect(Collectors.toSet());
    return Stream.concat(
            CornerJoints.of(card).missing().stream(),
            Stream.of(Joint.values()).filter(j -> !there.contains(j) && !j.direction()))
        .findFirst();
  }

  static String href(Card card, Joint joint) {
    return "/corners/" + card.corner() + "/linkage/" + Posted.word(joint);
  }

  private static Part part(
      String name, Joint from, Joint to, Card card, Map<Joint, SeenJoint> seen) {
    List<Row> rows = new ArrayList<>();
    for (Joint joint : EnumSet.range(from, to)) {
      SeenJoint at = seen.get(joint);
      rows.add(
          new Row(
              joint.key,
              Capital.of(joint.words),
              at == null ? "" : at.place().inWords(),
              at == null || at.stands() == Standing.LIVE ? null : Shown.state(at.stands()),
              href(card, joint)));
    }
    int there = (int) rows.stream().filter(r -> !r.at().isEmpty()).count();
    boolean wanted =
        from == Joint.LF
            && rows.stream().anyMatch(r -> r.at().isEmpty() || r.state() == State.STALE);
    return new Part(name, there, wanted, rows);
  }

  /** In front view, from the side and from above; none while nothing is laid out. */
  static List<CornerSketch> sketches(Card card) {
    CornerJoints joints = CornerJoints.of(card);
    Map<Joint, Vec> at = joints.at();
    if (at.keySet().stream().allMatch(Joint::direction)) {
      return List.of();
    }
    Wheel wheel = wheel(card, joints);
    boolean left = card.place().left();
    List<CornerSketch> sketches = new ArrayList<>();
    for (View view : View.values()) {
      Scale scale =
          Scale.around(
              view,
              left,
              CornerSketch.extent(at, wheel, view),
              view == View.FRONT ? WIDTH : HALF,
              view == View.FRONT ? MOST : HALF);
      String title =
          switch (view) {
            case FRONT -> "From ahead";
            case SIDE -> left ? "From its left" : "From its right";
            case TOP -> "From above";
          };
      sketches.add(CornerSketch.of(title, at, wheel, scale, view == View.FRONT));
    }
    return sketches;
  }

  private static Wheel wheel(Card card, CornerJoints joints) {
    Vec centre = joints.at().get(Joint.W);
    if (centre == null) {
      return null;
    }
    if (joints.linkage() == null) {
      Vec out = new Vec(0, card.place().left() ? 1 : -1, 0);
      return new Wheel(centre, out, centre.z());
    }
    Joints whole = joints.linkage().joints();
    return joints
        .linkage()
        .design(0)
        .map(CornerSketch::wheel)
        .orElse(new Wheel(centre, new Vec(0, 1, 0), whole.radiusMm()));
  }

  public boolean closes() {
    return state == State.CLEAR;
  }
}
