package spindlebook.gauge;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.fold.Written;
import spindlebook.page.Asked;
import spindlebook.page.Posted;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** What the owner wants each figure of alignment to be: from, to, either or neither. */
final class TargetForm {
  private static final Pattern A_LENGTH = Pattern.compile(".*(in|inch|inches|mm|cm|\"|″)\\s*");

  private TargetForm() {}

  /** Those that differ from the targets in force, each by what its entry's key ends in. */
  static Map<String, Content.Target> ask(Asked a, Card card) {
    a.said(
        "Empty on both sides asks nothing. Total toe and track are of both wheels. Toe may be"
            + " degrees, or a length across the edge with its unit: 1/16 in, 2 mm.");
    Map<String, Content.Target> changed = new LinkedHashMap<>();
    for (AlignedFigure figure : figures(card)) {
      Content.Target now = card.aligned().target(figure).map(Written::content).orElse(null);
      Content.Target typed = target(a, figure, card, now);
      if (typed != null && !same(typed, now)) {
        changed.put(Integer.toString(figure.ordinal()), typed);
      }
    }
    return changed;
  }

  /** Written down at either wheel, it asks the same. */
  private static boolean same(Content.Target typed, Content.Target now) {
    return now == null ? !typed.asks() : typed.inWords().equals(now.inWords());
  }

  /**
   * @param now null without a target
   */
  private static Content.Target target(
      Asked a, AlignedFigure figure, Card card, Content.Target now) {
    String from = Posted.word(figure) + "-from";
    String to = Posted.word(figure) + "-to";
    boolean lengths =
        !figure.angle()
            || (figure.length()
                && (a.sent()
                    ? asLength(a, from) || asLength(a, to)
                    : now != null && !now.angles()));
    Optional<Content.Target> was = Optional.ofNullable(now);
    String name = Capital.of(figure.words());
    Ends ends = new Ends(from, to, name, hint(figure), unit(figure, card));
    try {
      if (lengths) {
        BiFunction<String, String, Asked.Box<TypedLength>> asks =
            figure.angle() ? a::withUnit : a::signed;
        TypedLength least = ends.from(asks, was.map(Content.Target::least));
        TypedLength most = ends.to(asks, was.map(Content.Target::most));
        return new Content.Target(card.corner(), figure, null, null, least, most);
      }
      TypedAngle least = ends.from(a::angle, was.map(Content.Target::leastAngle));
      TypedAngle most = ends.to(a::angle, was.map(Content.Target::mostAngle));
      return new Content.Target(card.corner(), figure, least, most, null, null);
    } catch (IllegalArgumentException crossed) {
      a.wrong(from, "'From' is more than 'to': type the smaller one first.");
      return null;
    }
  }

  /** Both boxes of a figure, whether angles or lengths are typed in them. */
  private record Ends(String from, String to, String name, String hint, String unit) {
    <T> T from(BiFunction<String, String, Asked.Box<T>> asks, Optional<T> was) {
      return asks.apply(from, name + ", from").hint(hint).unit(unit).was(was.orElse(null)).read();
    }

    <T> T to(BiFunction<String, String, Asked.Box<T>> asks, Optional<T> was) {
      return asks.apply(to, name + ", to").unit(unit).was(was.orElse(null)).read();
    }
  }

  private static String hint(AlignedFigure figure) {
    return (figure.minus().isEmpty() ? "" : "+ ") + figure.plus() + ".";
  }

  private static boolean asLength(Asked a, String name) {
    return A_LENGTH.matcher(a.text(name).strip()).matches();
  }

  /** Toe may be typed either way, so that no one unit stands behind its box. */
  private static String unit(AlignedFigure figure, Card card) {
    boolean either = figure.length() && figure.angle();
    return either ? "" : figure.angle() ? "°" : card.details().unit().word();
  }

  private static List<AlignedFigure> figures(Card card) {
    return Stream.of(AlignedFigure.values())
        .filter(f -> card.layout().steered() || !f.ofSteeringAxis())
        .toList();
  }
}
