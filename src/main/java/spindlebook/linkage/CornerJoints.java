package spindlebook.linkage;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import spindlebook.definition.Dimension;
import spindlebook.definition.RackSide;
import spindlebook.entry.Content;
import spindlebook.entry.Joint;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenJoint;
import spindlebook.fold.SeenReading;
import spindlebook.uncertainty.Figure;

/**
 * The joints of a corner as its book has them: which count, what is missing, and the linkage they
 * make.
 *
 * <pre>
 *   x = back(W) − back      y = side · out      z = up      a direction: (−back, side · out, up)
 * </pre>
 *
 * Camber and toe of the wheel as it stands there are those read nearest to it, 0 where none was;
 * the loaded radius is the one given, else the wheel centre's height above the floor.
 *
 * @param at those that count, as {@link Joints} takes them; empty of mounts and directions that
 *     lack their fellow
 * @param missing of those without which there is no corner, and fellows
 * @param elsewhere laid out with the wheel at another height than most
 * @param linkage null where it does not close
 * @param refused why, in a sentence about {@code about}; null where it closes or something is
 *     missing
 * @param positionMm wheel position at which they were laid out; null where it is not known
 */
public record CornerJoints(
    Map<Joint, Vec> at,
    List<Joint> missing,
    List<SeenJoint> elsewhere,
    Linkage linkage,
    String refused,
    List<Joint> about,
    Figure positionMm) {

  private static final Map<Joint, Joint> FELLOWS = new EnumMap<>(Joint.class);

  static {
    fellows(Joint.SU, Joint.SL);
    fellows(Joint.KU, Joint.KL);
    fellows(Joint.BOLT_L, Joint.HOUSE_L);
    fellows(Joint.BOLT_U, Joint.HOUSE_U);
  }

  private static void fellows(Joint one, Joint other) {
    FELLOWS.put(one, other);
    FELLOWS.put(other, one);
  }

  /** Kept with the card. */
  public static CornerJoints of(Card card) {
    return card.memo().get("joints of the linkage", () -> read(card));
  }

  private static CornerJoints read(Card card) {
    String height = height(card.joints());
    List<SeenJoint> elsewhere =
        card.joints().stream()
            .filter(j -> j.stands().counts() && !j.place().joint().direction())
            .filter(j -> j.place().at() != null && !j.place().at().equals(height))
            .toList();
    Map<Joint, Vec> at = new EnumMap<>(Joint.class);
    double side = card.place().left() ? 1 : -1;
    double wheelBack =
        card.joints().stream()
            .filter(j -> j.place().joint() == Joint.W)
            .mapToDouble(j -> j.place().back().mm())
            .findFirst()
            .orElse(0);
    for (SeenJoint seen : card.joints()) {
      if (seen.stands().counts() && !elsewhere.contains(seen)) {
        Content.JointPlace place = seen.place();
        double from = place.joint().direction() ? 0 : wheelBack;
        at.put(
            place.joint(),
            new Vec(from - place.back().mm(), side * place.out().mm(), place.up().mm()));
      }
    }
    List<Joint> missing = new ArrayList<>();
    for (Joint joint : Joint.values()) {
      boolean fellow = FELLOWS.containsKey(joint) && at.containsKey(FELLOWS.get(joint));
      if (!at.containsKey(joint) && (joint.needed() || fellow)) {
        missing.add(joint);
      }
    }
    missing.forEach(joint -> at.remove(FELLOWS.get(joint)));
    Figure position =
        card.height(height)
            .filter(SeenHeight::positionCounts)
            .map(SeenHeight::positionMm)
            .orElse(null);
    Linkage linkage = null;
    String refused = null;
    List<Joint> about = List.of();
    if (missing.stream().noneMatch(Joint::needed)) {
      try {
        linkage =
            new Linkage(
                new Joints(
                    side > 0,
                    at,
                    angle(card, Quantity.TOE, position),
                    angle(card, Quantity.CAMBER, position),
                    radius(card, at.get(Joint.W).z())));
      } catch (LinkageRefused e) {
        refused = e.getMessage();
        about = e.about();
      }
    }
    return new CornerJoints(
        Collections.unmodifiableMap(at), missing, elsewhere, linkage, refused, about, position);
  }

  /** On which side of the axle the rack lies: as its owner says, else as it was laid out. */
  public static RackSide rack(Card card) {
    Map<Joint, Vec> at = of(card).at();
    RackSide said = card.details().rack();
    return said != null || !at.keySet().containsAll(List.of(Joint.TI, Joint.W))
        ? said
        : at.get(Joint.TI).x() < 0 ? RackSide.BEHIND_AXLE : RackSide.AHEAD_OF_AXLE;
  }

  /** The height that most of them say, the last of several; null where none says one. */
  private static String height(List<SeenJoint> joints) {
    Map<String, Integer> said = new LinkedHashMap<>();
    joints.stream()
        .filter(j -> j.stands().counts())
        .map(j -> j.place().at())
        .filter(Objects::nonNull)
        .forEach(h -> said.merge(h, 1, Integer::sum));
    return said.entrySet().stream()
        .reduce((a, b) -> a.getValue() > b.getValue() ? a : b)
        .map(Map.Entry::getKey)
        .orElse(null);
  }

  private static double radius(Card card, double centreMm) {
    return card.given(Dimension.TYRE_LOADED_RADIUS).map(g -> g.length().mm()).orElse(centreMm);
  }

  private static double angle(Card card, Quantity quantity, Figure position) {
    Stream<SeenReading> read =
        card.readingsOf(quantity).stream()
            .filter(r -> r.counts() && r.reading().steering() == Steering.STRAIGHT)
            .filter(r -> r.value() != null && !Double.isNaN(rad(card, r)));
    return position == null
        ? 0
        : read.min(
                Comparator.comparingDouble(
                    r -> Math.abs(r.height().positionMm().value() - position.value())))
            .map(r -> rad(card, r))
            .orElse(0.0);
  }

  /** As typed, or as a length across what was given; NaN where it was not. */
  private static double rad(Card card, SeenReading read) {
    return read.reading().angle() != null
        ? read.value().value()
        : card.given(Dimension.TOE_ACROSS)
            .map(g -> Math.asin(read.value().value() / g.length().mm()))
            .orElse(Double.NaN);
  }

  /** Places and wheel angles that may be other than given, those of a joint together. */
  public List<Coordinate> coordinates() {
    List<Coordinate> all = new ArrayList<>();
    for (Joint joint : at.keySet()) {
      if (!joint.direction()) {
        for (Coordinate.Axis axis : Coordinate.Axis.values()) {
          // The datum's place is the wheel centre's.
          if (joint != Joint.W || axis != Coordinate.Axis.X) {
            all.add(new Coordinate.Along(joint, axis));
          }
        }
      }
    }
    all.addAll(List.of(Coordinate.WheelAngle.values()));
    return all;
  }
}
