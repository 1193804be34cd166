package spindlebook.align;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import spindlebook.card.Capital;
import spindlebook.corner.AlignedFigure;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.EntryWords;
import spindlebook.corner.SeenTarget;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What the owner wants each figure of alignment to be: from, to, either or neither. */
sealed interface TargetForm {
  /** Only what differs from the targets in force. */
  record Accepted(List<Content.Target> changed) implements TargetForm {}

  record Problems() implements TargetForm {}

  Pattern A_LENGTH = Pattern.compile(".*(in|inch|inches|mm|cm|\"|″)\\s*");

  static TargetForm read(Posted posted, Card card) {
    List<Content.Target> changed = new ArrayList<>();
    for (AlignedFigure figure : figures(card)) {
      Content.Target now = card.aligned().target(figure).map(SeenTarget::target).orElse(null);
      Content.Target typed = target(posted, figure, card);
      if (typed != null && !same(typed, now)) {
        changed.add(typed);
      }
    }
    return posted.ok() ? new Accepted(changed) : new Problems();
  }

  /** Written down at either wheel, it asks the same. */
  private static boolean same(Content.Target typed, Content.Target now) {
    return now == null ? !typed.asks() : typed.inWords().equals(now.inWords());
  }

  private static Content.Target target(Posted posted, AlignedFigure figure, Card card) {
    String from = least(figure);
    String to = most(figure);
    LengthUnit unit = card.details().unit();
    boolean lengths =
        !figure.angle() || (figure.length() && (asLength(posted, from) || asLength(posted, to)));
    Content.Target target = null;
    try {
      if (lengths) {
        TypedLength least = posted.length(from, unit);
        TypedLength most = posted.length(to, unit);
        target = new Content.Target(card.corner(), figure, null, null, least, most);
      } else {
        TypedAngle least = posted.angle(from);
        TypedAngle most = posted.angle(to);
        target = new Content.Target(card.corner(), figure, least, most, null, null);
      }
    } catch (IllegalArgumentException crossed) {
      posted.wrong(from, "'From' is more than 'to': type the smaller one first.");
    }
    return target;
  }

  private static boolean asLength(Posted posted, String name) {
    return A_LENGTH.matcher(posted.text(name).strip()).matches();
  }

  static Posted fresh(Card card) {
    Map<String, List<String>> texts = new LinkedHashMap<>();
    for (AlignedFigure figure : figures(card)) {
      card.aligned()
          .target(figure)
          .map(SeenTarget::target)
          .ifPresent(
              t -> {
                put(texts, least(figure), t.leastAngle(), t.least());
                put(texts, most(figure), t.mostAngle(), t.most());
              });
    }
    return new Posted(texts);
  }

  private static void put(
      Map<String, List<String>> texts, String name, TypedAngle angle, TypedLength length) {
    if (angle != null) {
      texts.put(name, List.of(angle.typed()));
    } else if (length != null) {
      texts.put(name, List.of(EntryWords.typed(length)));
    }
  }

  static List<FormPart> parts(Posted posted, Card card) {
    List<FormPart> parts = new ArrayList<>();
    parts.add(
        new FormPart.Said(
            "Empty on both sides asks nothing. Total toe and track are of both wheels. Toe may be"
                + " degrees, or a length across the edge with its unit: 1/16 in, 2 mm."));
    for (AlignedFigure figure : figures(card)) {
      String unit =
          figure.length() && figure.angle()
              ? ""
              : figure.angle() ? "°" : card.details().unit().word();
      String hint = figure.minus().isEmpty() ? figure.plus() + "." : "+ " + figure.plus() + ".";
      String name = Capital.of(figure.words());
      parts.add(
          new FormPart.Typed(
              posted.fill(Field.of(least(figure), name + ", from").hint(hint).unit(unit))));
      parts.add(new FormPart.Typed(posted.fill(Field.of(most(figure), name + ", to").unit(unit))));
    }
    return parts;
  }

  private static List<AlignedFigure> figures(Card card) {
    List<AlignedFigure> all = new ArrayList<>(List.of(AlignedFigure.values()));
    if (!card.layout().steered()) {
      all.removeIf(f -> f.ofSteeringAxis());
    }
    return all;
  }

  private static String least(AlignedFigure figure) {
    return Posted.word(figure) + "-from";
  }

  private static String most(AlignedFigure figure) {
    return Posted.word(figure) + "-to";
  }
}
