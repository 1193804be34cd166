package spindlebook.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Retired;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.entry.GapResult;
import spindlebook.entry.Quantity;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenUse;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/**
 * An entry in words, as it is echoed when it is saved and told in the book: {@code left front ·
 * full droop · spindle 8 1/4 in · 209.6 mm}.
 */
public record EntryWords(CarBook book) {
  /** An answer to an answer to a correction: beyond this many the key alone is told. */
  private static final int DEEPEST = 4;

  private static final String TAKEN_BACK = "withdrawn";

  public String of(Content content) {
    return of(content, Set.of());
  }

  /**
   * @param told keys on the way here: a book written by hand may hold entries that name each other
   */
  private String of(Content content, Set<String> told) {
    return TOLD.get(content.getClass()).of(this, content, told);
  }

  private interface Telling<C> {
    String of(EntryWords words, C content, Set<String> told);
  }

  /** How each kind is told; none can be left out. */
  private static final Map<Class<? extends Content>, Telling<Content>> TOLD = new HashMap<>();

  private static <C extends Content> void tell(Class<C> kind, Telling<C> telling) {
    TOLD.put(kind, (words, content, told) -> telling.of(words, kind.cast(content), told));
  }

  /** The kinds that are told in words. */
  static Set<Class<? extends Content>> kinds() {
    return TOLD.keySet();
  }

  static {
    tell(Content.Car.class, (w, c, told) -> "car " + c.details().name());
    tell(Content.Corner.class, (w, c, told) -> c.place().words() + " · " + c.layout().words());
    tell(Content.Definition.class, (w, d, told) -> w.of(d));
    tell(Content.Round.class, (w, r, told) -> w.of(r));
    tell(Content.Height.class, (w, h, told) -> w.of(h));
    tell(Content.Reading.class, (w, r, told) -> w.of(r));
    tell(Content.Adjustment.class, (w, a, told) -> w.of(a));
    tell(Content.Happening.class, (w, h, told) -> w.of(h));
    tell(Content.Correction.class, (w, c, told) -> w.of(c, told));
    tell(
        Content.Answer.class,
        (w, a, told) ->
            (a.itIsSo() ? "it is so: " : "it does not count: ")
                + w.target(a.target(), w.book.standing(a.target()), told));
    tell(Content.Use.class, (w, u, told) -> "the whole car · " + SeenUse.words(u));
    tell(Content.Telltale.class, (w, t, told) -> w.place(t.corner()) + " · " + w.withoutPlace(t));
    tell(Content.ToDo.class, (w, t, told) -> w.of(t));
    tell(Content.Fastener.class, (w, f, told) -> w.of(f));
    tell(Content.Photo.class, (w, p, told) -> w.of(p, told));
    tell(Content.SignOff.class, (w, s, told) -> of(s));
    tell(Content.Alignment.class, (w, a, told) -> w.place(a.corner()) + " · " + withoutPlace(a));
    tell(
        Content.Target.class,
        (w, t, told) ->
            w.place(t.corner())
                + " · target for "
                + t.figure().words()
                + ": "
                + (t.asks() ? t.inWords() : "no target any more"));
    tell(Content.Part.class, (w, p, told) -> w.of(p));
    tell(
        Content.JointPlace.class,
        (w, j, told) -> w.place(j.corner()) + " · " + j.joint().words + " · " + j.inWords());
    tell(Content.Kept.class, (w, k, told) -> k.kind());
  }

  private String of(Content.Happening h) {
    String where = h.corner() == null ? "the whole car" : place(h.corner());
    return where + " · " + h.what().words() + (h.words() == null ? "" : ": " + h.words());
  }

  /** Without its corner: {@code ring on the shock shaft · 2 1/4 in · 57.2 mm}. */
  public String withoutPlace(Content.Telltale t) {
    StringBuilder words = new StringBuilder(t.what().words());
    if (t.point() != null) {
      words.append(", ").append(pointName(t.corner(), t.point()));
    }
    if (t.length() != null) {
      words.append(" · ").append(both(t.length()));
    } else if (t.typed() != null) {
      words.append(" · ").append(t.typed());
    }
    if (t.shockLength() != null) {
      words.append(" · shock ").append(both(t.shockLength()));
    } else if (t.at() != null) {
      words.append(" · read ").append(t.at().words());
    }
    if (t.pull() != null) {
      words.append(" · pulled with ").append(t.pull().typed());
    }
    return t.words() == null ? words.toString() : words + ": " + t.words();
  }

  /** Without its corner: {@code camber by gauge · -1/2° · rolled and bounced, driver in}. */
  public static String withoutPlace(Content.Alignment a) {
    AlignmentWay way = a.way();
    List<String> conditions = new ArrayList<>();
    conditions.add(a.rolled() ? "rolled and bounced" : "straight off the jack");
    if (a.load() != null) {
      conditions.add(a.load().words());
    }
    if (a.fuel() != null) {
      conditions.add("fuel " + a.fuel());
    }
    if (a.pressures() != null) {
      conditions.add("tyres " + a.pressures());
    }
    return way.thing().words()
        + " by "
        + way.words()
        + " · "
        + way.said()
        + " · "
        + String.join(", ", conditions)
        + (a.words() == null ? "" : ": " + a.words());
  }

  private String of(Content.ToDo t) {
    if (t.target() != null) {
      String what =
          book.standing(t.target()).orElse(null) instanceof Content.ToDo first
                  && first.words() != null
              ? first.words()
              : t.target();
      return (t.done() ? "done: " : "to do again: ") + what;
    }
    String where = t.corner() == null ? "the whole car" : place(t.corner());
    String point = t.point() == null ? "" : " · " + pointName(t.corner(), t.point());
    return where + point + " · to do: " + t.words();
  }

  private String of(Content.Fastener f) {
    StringBuilder words = new StringBuilder(place(f.corner()));
    words.append(" · fastener of ").append(adjusterName(f.corner(), f.adjuster()));
    if (f.tight() != null) {
      String marked = Boolean.TRUE.equals(f.marked()) ? "tight and marked" : "tight, not marked";
      words.append(" · ").append(f.tight() ? marked : "found loose");
    }
    if (f.torque() != null) {
      words.append(f.torque().isBlank() ? " · no torque figure" : " · torque " + f.torque());
    }
    return f.words() == null ? words.toString() : words + ": " + f.words();
  }

  private String of(Content.Part p) {
    return (p.corner() == null ? "the whole car" : place(p.corner()))
        + " · "
        + p.called()
        + " "
        + p.done().words()
        + (p.usedBefore() == null ? "" : " · used before: " + p.used(p.usedBefore()))
        + (p.lookAfter() == null ? "" : " · look at it after " + p.used(p.lookAfter()))
        + (p.words() == null ? "" : ": " + p.words());
  }

  private String of(Content.Photo p, Set<String> told) {
    StringBuilder words = new StringBuilder(place(p.corner())).append(" · photo");
    if (p.side() != null) {
      words.append(' ').append(p.side().words());
    }
    if (p.point() != null) {
      words.append(" · ").append(pointName(p.corner(), p.point()));
    }
    if (p.words() != null) {
      words.append(": ").append(p.words());
    }
    return p.target() == null
        ? words.toString()
        : words + " (of " + target(p.target(), book.standing(p.target()), told) + ")";
  }

  private static String of(Content.SignOff s) {
    int open = s.open().size();
    String left = open == 0 ? "nothing open" : open + (open == 1 ? " thing open" : " things open");
    String why = s.why() == null ? "" : ": " + s.why();
    return "the whole car · signed off as of entry " + s.n() + ", " + left + why;
  }

  private String of(Content.Definition d) {
    String where = d.corner() == null ? "" : place(d.corner()) + " · ";
    if (d.what() instanceof Retired r && r.watchPoint() != null) {
      return where + "retired " + pointName(d.corner(), r.watchPoint());
    }
    if (d.what() instanceof Retired r && r.adjuster() != null) {
      return where + "retired " + adjusterName(d.corner(), r.adjuster());
    }
    return where + d.what().inWords();
  }

  private String of(Content.Round round) {
    return place(round.corner())
        + " · round, spring "
        + (round.springIn() ? "in" : "out")
        + ", bump stop "
        + (round.bumpStopIn() ? "in" : "out")
        + ", wheel "
        + (round.wheelOn() ? "on" : "off")
        + ", on "
        + (round.onTyres() ? "its tyres" : "stands");
  }

  private String of(Content.Height h) {
    StringBuilder words = new StringBuilder(place(cornerOfRound(h.round())));
    words.append(" · ").append(h.name().words());
    if (h.label() != null && !h.label().isBlank()) {
      words.append(", ").append(h.label());
    }
    if (h.pairing() != null) {
      words.append(", ").append(h.pairing().words());
    }
    words.append(read(h.spindle(), h.mark(), h.markAsAt()));
    if (h.otherEnd() != null) {
      Content.OtherEnd other = h.otherEnd();
      words.append(" · ").append(otherEnd(cornerOfRound(h.round())));
      if (other.name() != null && other.name() != h.name()) {
        words.append(" ").append(other.name().words());
      }
      words.append(
          other.spindle() == null
              ? " not read"
              : read(other.spindle(), other.mark(), h.markAsAt()));
    }
    return words.toString();
  }

  private static String read(TypedLength spindle, TypedLength mark, String markAsAt) {
    String stood = spindle == null ? "" : " · spindle " + both(spindle);
    if (mark != null) {
      return stood + " · mark " + both(mark);
    }
    return stood + (markAsAt != null ? " · mark as before" : " · no mark");
  }

  /** The other end of the axle that a corner is an end of, in words. */
  private String otherEnd(String corner) {
    return book.placeOf(corner).map(p -> p.mirror().words()).orElse("other end");
  }

  private String of(Content.Reading r) {
    Content.Height height = book.standing(r.height(), Content.Height.class).orElse(null);
    String corner = height == null ? null : cornerOfRound(height.round());
    boolean other = Boolean.TRUE.equals(r.atOtherEnd());
    String end = other ? otherEnd(corner) : place(corner);
    String where = height == null ? "" : end + " · " + at(height, other) + " · ";
    String of =
        other
            ? book.placeOf(corner).flatMap(p -> book.cornerAt(p.mirror())).orElse(corner)
            : corner;
    String what =
        r.quantity() == Quantity.WATCH_POINT ? pointName(of, r.point()) : r.quantity().words();
    String note = r.note() == null || r.note().isBlank() ? "" : ": " + r.note().strip();
    return where + r.steering().words() + " · " + what + " · " + value(r) + note;
  }

  private static String at(Content.Height height, boolean otherEnd) {
    Content.Height seen = otherEnd ? height.fromOtherEnd() : height;
    return seen.name().words() + (seen.pairing() == null ? "" : ", " + seen.pairing().words());
  }

  /** The value alone: {@code 3/8 in · 9.5 mm}, {@code well clear}. */
  public static String value(Content.Reading r) {
    if (r.result() == GapResult.UNREAD) {
      return "'" + r.typed() + "', not read yet";
    }
    if (r.result() == GapResult.GO_NO_GO) {
      String go = r.go() == null ? "" : r.go().words() + " goes";
      String noGo = r.noGo() == null ? "" : r.noGo().words() + " does not";
      return go + (go.isEmpty() || noGo.isEmpty() ? "" : ", ") + noGo;
    }
    if (r.result() != GapResult.NUMBER) {
      return r.result().words();
    }
    TypedAngle angle = r.angle();
    return angle != null ? TypedLength.minus(angle.typed()) : both(r.length());
  }

  private String of(Content.Adjustment a) {
    String from = a.from() == null ? "" : " from " + a.from().inWords();
    String why = a.why() == null ? "" : ": " + a.why();
    return place(a.corner())
        + " · "
        + adjusterName(a.corner(), a.adjuster())
        + from
        + " to "
        + a.to().inWords()
        + why;
  }

  private String target(String key, Optional<Content> said, Set<String> told) {
    if (said.isEmpty() || told.contains(key) || told.size() == DEEPEST) {
      return key;
    }
    Set<String> further = new HashSet<>(told);
    further.add(key);
    return of(said.get(), further);
  }

  private String of(Content.Correction c, Set<String> told) {
    String before = target(c.target(), book.original(c.target()), told);
    String reason = c.reason().isBlank() ? "" : ": " + c.reason();
    if (c.body() == null
        && book.original(c.target()).orElse(null) instanceof Content.Correction back
        && back.body() == null
        && !back.target().equals(c.target())) {
      return "put back: " + target(back.target(), book.original(back.target()), told);
    }
    return c.body() == null
        ? TAKEN_BACK + (c.reason().equals(TAKEN_BACK) ? "" : reason) + " (" + before + ")"
        : of(c.body(), told) + reason + " (was " + before + ")";
  }

  private String adjusterName(String corner, String adjuster) {
    return said(corner, Content.Corner::adjusters, Adjuster.class)
        .filter(a -> a.adjuster().equals(adjuster))
        .reduce((older, newer) -> newer)
        .map(Adjuster::name)
        .orElse(adjuster);
  }

  private String pointName(String corner, String point) {
    return said(corner, Content.Corner::watchPoints, WatchPoint.class)
        .filter(p -> p.point().equals(point))
        .reduce((older, newer) -> newer)
        .map(WatchPoint::name)
        .orElse(point);
  }

  /** Every version a corner was ever given, retired ones too: an old entry keeps its name. */
  private <T> Stream<T> said(
      String corner, Function<Content.Corner, List<T>> first, Class<T> kind) {
    Stream<T> defined =
        book.definitions().stream()
            .filter(d -> corner != null && corner.equals(d.corner()) && kind.isInstance(d.what()))
            .map(d -> kind.cast(d.what()));
    return Stream.concat(corner(corner).stream().flatMap(c -> first.apply(c).stream()), defined);
  }

  private String cornerOfRound(String round) {
    return book.standing(round, Content.Round.class).map(Content.Round::corner).orElse(null);
  }

  private String place(String corner) {
    return corner(corner).map(c -> c.place().words()).orElse("a corner");
  }

  private Optional<Content.Corner> corner(String key) {
    return key == null ? Optional.empty() : book.standing(key, Content.Corner.class);
  }

  /** As typed with its unit, and in the other system: {@code 8 1/4 in · 209.6 mm}. */
  private static String both(TypedLength length) {
    String other =
        length.unit() == LengthUnit.INCH
            ? TapeFormat.mm(length.mm(), 1)
            : TapeFormat.length(length.mm(), LengthUnit.INCH, 16);
    return length.words() + " · " + other;
  }
}
