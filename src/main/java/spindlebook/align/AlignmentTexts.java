package spindlebook.align;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.corner.AlignmentWay;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.Dimension;
import spindlebook.corner.EntryWords;
import spindlebook.corner.SeenAlignment;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Posted;

/** A measurement of alignment as it is typed again: to correct it, or to begin the next with. */
final class AlignmentTexts {
  /** What stays the same from one measurement to the next, so that it need not be typed again. */
  private static final List<String> STAYS =
      List.of(
          "side",
          "spacing",
          "across",
          "distance",
          "by",
          "left-lock",
          "right-lock",
          "kpi",
          "over",
          "offset",
          "section",
          "radius",
          "load",
          "fuel",
          "pressures",
          "length-tool",
          "angle-tool",
          "lock-tool");

  private AlignmentTexts() {}

  /** What a fresh form starts with: what the last one of its kind said, where that stays. */
  static Posted fresh(TakenBy by, Card card) {
    Map<String, List<String>> texts = new LinkedHashMap<>();
    card.given(Dimension.TYRE_LOADED_RADIUS)
        .ifPresent(g -> texts.put("radius", List.of(EntryWords.typed(g.length()))));
    for (SeenAlignment earlier : card.aligned().read()) {
      Map<String, List<String>> said = of(earlier.alignment());
      boolean same = TakenBy.of(earlier.way()) == by;
      said.keySet().retainAll(same ? STAYS : List.of("load", "fuel", "pressures"));
      texts.putAll(said);
    }
    return new Posted(texts);
  }

  /** By the names of the form's fields. */
  static Map<String, List<String>> of(Content.Alignment a) {
    Map<String, String> t = new LinkedHashMap<>();
    AlignmentWay way = a.way();
    if (way instanceof AlignmentWay.Gauge w) {
      put(t, "read", w.read());
      put(t, "turned", w.turned());
      put(t, "zero", w.zero());
    } else if (way instanceof AlignmentWay.Line w) {
      t.put("side", Posted.word(w.side()));
      put(t, "front", w.front());
      put(t, "rear", w.rear());
      put(t, "spacing", w.spacing());
      if (w.lean() != null) {
        t.put("lean-places", Posted.word(w.lean().places()));
        put(t, "lean-front", w.lean().front());
        put(t, "lean-rear", w.lean().rear());
        put(t, "lean-apart", w.lean().apart());
        put(t, "lean-wider", w.lean().frontWider());
      }
    } else if (way instanceof AlignmentWay.Spot w) {
      put(t, "inward", w.inward());
      put(t, "distance", w.distance());
    } else if (way instanceof AlignmentWay.Dials w) {
      put(t, "dial-front", w.front());
      put(t, "dial-rear", w.rear());
      put(t, "spacing", w.spacing());
      put(t, "from", w.from());
    } else if (way instanceof AlignmentWay.Tape w) {
      put(t, "front", w.front());
      put(t, "rear", w.rear());
      put(t, "across", w.across());
    } else if (way instanceof AlignmentWay.Swing w) {
      swept(t, w);
    } else if (way instanceof AlignmentWay.Joint w) {
      put(t, "ahead", w.ahead());
      put(t, "inboard", w.inboard());
      put(t, "below", w.below());
      put(t, "radius", w.loadedRadius());
    } else if (way instanceof AlignmentWay.Across w) {
      t.put("over", w.outside() ? "outside" : "hub-faces");
      put(t, "length", w.length());
      put(t, "offset", w.offset());
      put(t, "section", w.section());
    }
    t.put("rolled", a.rolled() ? "yes" : "no");
    t.put("load", a.load() == null ? null : Posted.word(a.load()));
    t.put("fuel", a.fuel());
    t.put("pressures", a.pressures());
    t.put("words", a.words());
    t.put("length-tool", a.lengthTool());
    t.put("angle-tool", a.angleTool());
    t.put("lock-tool", a.lockTool());
    Map<String, List<String>> texts = new LinkedHashMap<>();
    t.forEach(
        (name, text) -> {
          if (text != null) {
            texts.put(name, List.of(text));
          }
        });
    return texts;
  }

  private static void swept(Map<String, String> t, AlignmentWay.Swing w) {
    t.put("by", Posted.word(w.by()));
    put(t, "left-lock", w.leftLock());
    put(t, "camber-left", w.camberLeft());
    put(t, "camber-straight", w.camberStraight());
    put(t, "right-lock", w.rightLock());
    put(t, "camber-right", w.camberRight());
    put(t, "kpi", w.kpi());
    put(t, "pitch-left", w.pitchLeft());
    put(t, "pitch-straight", w.pitchStraight());
    put(t, "pitch-right", w.pitchRight());
  }

  private static void put(Map<String, String> texts, String name, TypedLength length) {
    texts.put(name, length == null ? null : EntryWords.typed(length));
  }

  private static void put(Map<String, String> texts, String name, TypedAngle angle) {
    texts.put(name, angle == null ? null : angle.typed());
  }
}
