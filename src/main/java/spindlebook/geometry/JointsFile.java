package spindlebook.geometry;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.Map;
import spindlebook.entry.Content.JointPlace;
import spindlebook.entry.Joint;
import spindlebook.fold.Card;
import spindlebook.fold.SeenJoint;
import spindlebook.linkage.CornerText;
import spindlebook.linkage.LinkageRefused;
import spindlebook.linkage.Vec;
import spindlebook.page.Posted;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.units.TypedLength;

/** A corner's joints from the file of {@code linkage CORNER.csv}; docs/format-linkage.md. */
final class JointsFile {
  /** Nearer than any tape tells: the same joint. */
  private static final double SAME_MM = 0.01;

  /** The front datum where no wheel centre was laid out: so far ahead of it. */
  private static final double AHEAD_MM = 1000;

  private JointsFile() {}

  /**
   * What of it is new, by the word of each joint's page.
   *
   * @param at key of the height at which the wheel stands in it; null for none
   * @throws LinkageRefused in a sentence, where it is no such file, or another side's
   */
  static Map<String, JointPlace> changed(Card card, String text, String at) {
    CornerText file = CornerText.read(text);
    boolean left = card.place().left();
    if (file.joints().left() != left) {
      throw new LinkageRefused(
          "This file is of a corner on the car's other side: change its side, and the sign of y.");
    }
    Map<Joint, SeenJoint> were = new EnumMap<>(Joint.class);
    card.joints().forEach(j -> were.put(j.place().joint(), j));
    double ahead = were.containsKey(Joint.W) ? were.get(Joint.W).place().back().mm() : AHEAD_MM;
    ahead += file.joints().get(Joint.W).x();
    LengthUnit unit = card.details().unit();
    Map<String, JointPlace> changed = new LinkedHashMap<>();
    for (Map.Entry<Joint, Vec> each : file.joints().at().entrySet()) {
      Joint joint = each.getKey();
      Vec p = each.getValue();
      TypedLength out = length(left ? p.y() : -p.y(), unit);
      TypedLength back = length((joint.direction() ? 0 : ahead) - p.x(), unit);
      TypedLength up = length(p.z(), unit);
      SeenJoint seen = were.get(joint);
      JointPlace was = seen == null ? null : seen.place();
      if (was == null
          || !seen.stands().counts()
          || apart(was.out(), out)
          || apart(was.back(), back)
          || apart(was.up(), up)) {
        changed.put(
            Posted.word(joint),
            new JointPlace(
                card.corner(), joint, out, back, up, at, was == null ? null : was.allows()));
      }
    }
    return changed;
  }

  private static boolean apart(TypedLength one, TypedLength other) {
    return Math.abs(one.mm() - other.mm()) > SAME_MM;
  }

  /** As a hand would type it, to a hundredth of a millimetre. */
  private static TypedLength length(double mm, LengthUnit unit) {
    String number =
        BigDecimal.valueOf(mm / unit.mm())
            .setScale(4, RoundingMode.HALF_EVEN)
            .stripTrailingZeros()
            .toPlainString();
    return TapeText.plain(number + " " + unit.word(), unit).orElseThrow();
  }
}
