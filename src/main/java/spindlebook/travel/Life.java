package spindlebook.travel;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.entry.Content;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.uncertainty.Outcome;

/**
 * The life of a corner: what was known of its two ends after each change that matters, as we knew
 * it then. A round's readings, and definitions in a row, are one change; each setting, happening,
 * drive, correction and answer is one by itself.
 *
 * @param earlier the position of the last change before the first that is told; 0 where none was
 */
public record Life(List<Point> points, long earlier) {
  private static final double SIXTEENTH_MM = 25.4 / 16;

  /** After entry {@code n}; equal to what {@code book.asOf(n)} gives. */
  public record Point(long n, Instant at, Ends ends) {}

  public record Ends(Known droop, Known bump) {
    public static Ends of(TravelFindings travel) {
      return new Ends(Known.of(travel.droop()), Known.of(travel.bump()));
    }

    public Known at(End end) {
      return end == End.DROOP ? droop : bump;
    }
  }

  /**
   * An end's margin, mm at the wheel; negative is past its limit.
   *
   * @param marginMm null where it was not known
   * @param expandedMm its U, k = 2
   * @param atLeast counted to the last reading of a rule that is still kept there
   * @param current its stop and what is held back there were read since anything moved or wore them
   */
  public record Known(
      Outcome outcome, Double marginMm, double expandedMm, boolean atLeast, boolean current) {
    static Known of(EndFindings end) {
      return new Known(
          end.outcome(),
          end.roomMm().map(m -> m.value()).orElse(null),
          end.roomMm().map(m -> m.U()).orElse(0.0),
          end.marginAtLeast() && (end.outcome() == Outcome.CLEAR || end.outcome() == Outcome.NEEDS),
          end.roomMm().isPresent()
              && end.stop().filter(StopFound::notConfirmed).isEmpty()
              && end.heldBack().filter(h -> !h.because().isEmpty()).isEmpty());
    }

    /** Current, and more than how far was read of what is still kept there. */
    public boolean shown() {
      return current && !(atLeast && marginMm < 0);
    }

    /** Whether another says the same to a sixteenth of an inch. */
    public boolean near(Known other) {
      return outcome == other.outcome
          && marginMm != null
          && other.marginMm != null
          && Math.abs(marginMm - other.marginMm) < SIXTEENTH_MM;
    }
  }

  public Life {
    points = List.copyOf(points);
  }

  /**
   * The last changes up to the end of the book. What was worked out for an entry is kept with it.
   *
   * @param most how many; for each that is not kept yet the corner is folded one change on
   */
  public static Life of(CarBook book, String corner, int most) {
    List<Noted> all = changes(book, corner);
    int from = Math.max(0, all.size() - most);
    Map<Object, Point> kept =
        book.asKnown().get(List.of(Life.class, corner), ConcurrentHashMap::new);
    List<Point> points = new ArrayList<>();
    CarBook then = null;
    for (Noted change : all.subList(from, all.size())) {
      Point point = kept.get(List.of(change.n(), change.key()));
      if (point == null) {
        then = change.n() == book.n() ? book : grown(book, then, change.n());
        point = new Point(change.n(), change.at(), Ends.of(CornerTravel.of(then.card(corner))));
        kept.put(List.of(change.n(), change.key()), point);
      }
      points.add(point);
    }
    return new Life(points, from == 0 ? 0 : all.get(from - 1).n());
  }

  /**
   * As of n, where there is one from an earlier one, an entry at a time, so that its fold grows.
   */
  private static CarBook grown(CarBook book, CarBook earlier, long n) {
    CarBook then = earlier == null ? book.asOf(n) : earlier;
    for (Noted entry : earlier == null ? List.<Noted>of() : book.entries()) {
      then = entry.n() > then.n() && entry.n() <= n ? then.with(entry) : then;
    }
    return then;
  }

  /** The last entry of each change. */
  private static List<Noted> changes(CarBook book, String corner) {
    List<Noted> last = new ArrayList<>();
    Map<String, String> rounds = new HashMap<>();
    Object before = null;
    boolean born = false;
    for (Noted entry : book.entries()) {
      born |= entry.key().equals(corner);
      Object change = change(book, corner, entry, rounds);
      if (born && change != null) {
        if (change.equals(before)) {
          last.remove(last.size() - 1);
        }
        last.add(entry);
        before = change;
      }
    }
    return last;
  }

  /**
   * What entries of one change have in common; null for what moves nothing on this corner.
   *
   * @param rounds of heights and of themselves, by key
   */
  private static Object change(
      CarBook book, String corner, Noted entry, Map<String, String> rounds) {
    Content content = entry.content();
    if (content instanceof Content.Round) {
      rounds.put(entry.key(), entry.key());
    } else if (content instanceof Content.Height height) {
      rounds.put(entry.key(), height.round());
    }
    String round =
        rounds.get(content instanceof Content.Reading reading ? reading.height() : entry.key());
    if (round != null) {
      boolean here =
          Stream.of(book.original(round), book.standing(round))
              .anyMatch(
                  r ->
                      r.isEmpty() || r.get() instanceof Content.Round of && here(of, book, corner));
      return here ? round : null;
    }
    boolean movesNothing =
        content instanceof Content.Adjustment a && atOtherEnd(a.corner(), book, corner)
            || content instanceof Content.Happening h && atOtherEnd(h.corner(), book, corner)
            || content instanceof Content.Photo
            || content instanceof Content.ToDo
            || content instanceof Content.Fastener
            || content instanceof Content.SignOff
            || content instanceof Content.Alignment
            || content instanceof Content.Target
            || content instanceof Content.Part p && p.adjuster() == null
            || content instanceof Content.Telltale t
                && (t.what() != TelltaleKind.STRAP_LENGTH || t.pull() != null);
    boolean given =
        content instanceof Content.Definition
            || content instanceof Content.Corner
            || content instanceof Content.JointPlace;
    return movesNothing ? null : given ? Content.Definition.class : entry.key();
  }

  /**
   * Whether a change was made at the car's other end: of this corner's, only ride may have moved.
   */
  private static boolean atOtherEnd(String changed, CarBook book, String corner) {
    Place here = book.placeOf(corner).orElseThrow();
    return book.placeOf(changed).filter(p -> p != here && p != here.mirror()).isPresent();
  }

  /** Whether a round is of this corner, or of the other end of its solid axle. */
  private static boolean here(Content.Round round, CarBook book, String corner) {
    return corner.equals(round.corner())
        || book.standing(round.corner()).orElse(null) instanceof Content.Corner other
            && other.layout() == Layout.SOLID_AXLE_END
            && book.placeOf(corner).filter(p -> p == other.place().mirror()).isPresent();
  }
}
