package spindlebook.plan;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Place;
import spindlebook.definition.Setting;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.fold.Noted;
import spindlebook.fold.SeenUse;
import spindlebook.fold.Written;

/**
 * What brings a car's settings back as they stood at an earlier entry, in the order of the bench,
 * and what no setting brings back.
 *
 * <p>As they stood, not as they were known: a setting that was mistyped then and corrected since
 * counts as corrected.
 *
 * @param steps one adjustment each
 * @param cannot settings and happenings that no adjustment undoes, and why
 */
public record PuttingBack(List<Step> steps, List<Cannot> cannot) {

  /** Which settings have their turn, within it what hangs on the other after it, and why then. */
  public enum Turn {
    PARTS(
        "Parts and arms first",
        "everything else hangs on them",
        AdjusterKind.ARM,
        AdjusterKind.KNUCKLE,
        AdjusterKind.PIVOT_SHIMS,
        AdjusterKind.AXLE_LINKS,
        AdjusterKind.PANHARD_ROD,
        AdjusterKind.LOWER_ROD_ENDS,
        AdjusterKind.UPPER_ROD_ENDS,
        AdjusterKind.DRIVE_SHAFT),
    CARRIED(
        "Springs, shocks and tyres",
        "they set ride height, and toe is set at ride",
        AdjusterKind.SHOCK,
        AdjusterKind.SPRING,
        AdjusterKind.HOSE,
        AdjusterKind.WHEEL,
        AdjusterKind.TYRE,
        AdjusterKind.TYRE_PRESSURE,
        AdjusterKind.SPRING_PRELOAD),
    TOE(
        "The steering",
        "arms and ride height move toe, so it is set after them",
        AdjusterKind.RACK_POSITION,
        AdjusterKind.TIE_ROD_SHIM,
        AdjusterKind.TIE_ROD_LENGTH,
        AdjusterKind.TOE_LINK_LENGTH),
    STOPS(
        "Straps and stops last",
        "only then is it known where the wheel gets to",
        AdjusterKind.LIMIT_STRAP,
        AdjusterKind.BUMP_STOP_SPACER,
        AdjusterKind.STEERING_STOP);

    private final String words;
    private final String why;
    private final List<AdjusterKind> kinds;

    Turn(String words, String why, AdjusterKind... kinds) {
      this.words = words;
      this.why = why;
      this.kinds = List.of(kinds);
    }

    public String words() {
      return words;
    }

    public String why() {
      return why;
    }

    static Turn of(AdjusterKind kind) {
      return Arrays.stream(values()).filter(t -> t.kinds.contains(kind)).findFirst().orElseThrow();
    }
  }

  /**
   * @param now null when what it is set to was never said
   */
  public record Step(String corner, Place place, Adjuster adjuster, Setting now, Setting then) {
    public Turn turn() {
      return Turn.of(adjuster.kind());
    }

    Content.Adjustment adjustment() {
      return new Content.Adjustment(corner, adjuster.adjuster(), now, then, null, null);
    }
  }

  /**
   * @param place null for the whole car
   * @param entry the entry that did it; null for none
   */
  public record Cannot(Place place, String what, String why, String entry) {
    private static Cannot setting(Place place, String what, String why) {
      return new Cannot(place, what, why, null);
    }
  }

  public static PuttingBack to(CarBook now, long n) {
    CarBook then = stood(now, n);
    List<Step> steps = new ArrayList<>();
    List<Cannot> cannot = new ArrayList<>();
    for (String corner : now.corners()) {
      Card today = now.card(corner);
      if (then.corners().contains(corner)) {
        new OfCorner(now, n, today, then.card(corner)).take(steps, cannot);
      } else {
        cannot.add(Cannot.setting(today.place(), "all of it", "was not in the book then"));
      }
    }
    befallen(now, n, cannot);
    driven(now, n, cannot);
    steps.sort(
        Comparator.comparing(Step::turn)
            .thenComparing(s -> s.turn().kinds.indexOf(s.adjuster().kind()))
            .thenComparing(Step::place));
    return new PuttingBack(steps, cannot);
  }

  /** The book with every step made after what is in it; nobody wrote them. */
  public CarBook made(CarBook now) {
    return OnPaper.with(now, steps.stream().map(Step::adjustment).toList());
  }

  /** Up to n, with what was corrected or answered since. */
  private static CarBook stood(CarBook now, long n) {
    return CarBook.of(
        now.entries().stream()
            .filter(
                e ->
                    e.n() <= n
                        || e.content() instanceof Content.Correction
                        || e.content() instanceof Content.Answer)
            .toList());
  }

  /** One corner's settings, today and then. */
  private record OfCorner(CarBook book, long n, Card now, Card then) {

    void take(List<Step> steps, List<Cannot> cannot) {
      for (InForce set : now.adjusters()) {
        Adjuster adjuster = set.adjuster();
        Optional<InForce> before = then.adjuster(adjuster.adjuster());
        if (before.isEmpty()) {
          cannot.add(Cannot.setting(now.place(), adjuster.name(), "was not in the book then"));
          continue;
        }
        Setting stood =
            Optional.ofNullable(before.get().setting())
                .or(() -> cameFrom(adjuster.adjuster()))
                .orElse(null);
        if (stood == null || stood.same(set.setting())) {
          if (stood == null && set.setting() != null) {
            cannot.add(
                Cannot.setting(
                    now.place(), adjuster.name(), "what it was set to was not said then"));
          }
        } else if (adjuster.unit() != stood.unit()) {
          cannot.add(
              Cannot.setting(
                  now.place(),
                  adjuster.name(),
                  "stood at " + stood.inWords() + " and is counted another way now"));
        } else {
          steps.add(new Step(now.corner(), now.place(), adjuster, set.setting(), stood));
        }
      }
      for (InForce gone : then.adjusters()) {
        if (now.adjuster(gone.adjuster().adjuster()).isEmpty()) {
          cannot.add(
              Cannot.setting(
                  now.place(),
                  gone.adjuster().name(),
                  "was retired since"
                      + (gone.setting() == null
                          ? ""
                          : "; it stood at " + gone.setting().inWords())));
        }
      }
    }

    /** Where the first change after n says it stood until then. */
    private Optional<Setting> cameFrom(String adjuster) {
      for (Noted entry : book.entries()) {
        if (entry.n() > n
            && book.standing(entry.key()).orElse(null) instanceof Content.Adjustment a
            && a.corner().equals(now.corner())
            && a.adjuster().equals(adjuster)
            && book.counts(new Written<>(entry, a))) {
          return Optional.ofNullable(a.from());
        }
      }
      return Optional.empty();
    }
  }

  private static void befallen(CarBook book, long n, List<Cannot> cannot) {
    for (Noted entry : book.entries()) {
      if (entry.n() > n
          && book.standing(entry.key()).orElse(null) instanceof Content.Happening h
          && h.what() != HappeningKind.DRIVEN) {
        String more = h.words() == null || h.words().isBlank() ? "" : ": " + h.words();
        cannot.add(
            new Cannot(
                book.placeOf(h.corner()).orElse(null),
                h.what().words() + more,
                h.what() == HappeningKind.HIT_OR_BENT
                    ? "no setting straightens it"
                    : "no setting undoes it",
                entry.key()));
      }
    }
  }

  /** All drives since, as one. */
  private static void driven(CarBook book, long n, List<Cannot> cannot) {
    List<SeenUse> since = book.uses().stream().filter(u -> u.n() > n).toList();
    if (!since.isEmpty()) {
      cannot.add(
          new Cannot(
              null,
              since.size() == 1 ? since.get(0).words() : "driven, " + since.size() + " times",
              "straps may have stretched",
              since.get(since.size() - 1).key()));
    }
  }
}
