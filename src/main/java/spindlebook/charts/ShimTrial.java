package spindlebook.charts;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import spindlebook.alignment.BumpShape;
import spindlebook.alignment.BumpSteer;
import spindlebook.alignment.ShimTried;
import spindlebook.alignment.ToeRead;
import spindlebook.charts.BumpSteerView.Shim;
import spindlebook.curve.Node;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.entry.Content;
import spindlebook.entry.Joint;
import spindlebook.entry.Steering;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.InForce;
import spindlebook.linkage.Coordinate;
import spindlebook.linkage.ModelFigure;
import spindlebook.linkage.WorkBack;
import spindlebook.measured.CornerModel;
import spindlebook.uncertainty.Figure;

/**
 * The last shim tried under the outer tie-rod end, out of the book: toe's slope before it and
 * since, and how much more shim would level it.
 */
record ShimTrial(Card card, CarBook book) {
  private static final int PLACES = 3;
  private static final Coordinate OUTER_END_UP = new Coordinate.Along(Joint.TO, Coordinate.Axis.Z);
  private static final double MOST_MM = 50;

  /** Each is a card folded anew. */
  private static final int MOST_CHANGES = 5;

  /**
   * @param upMm how much thicker it became
   * @param before slope at ride, rad per mm; null where toe was not read at enough places for it
   * @param after likewise, by what was read since
   * @param moreMm empty while the shim's doing cannot be told from the ± of the two slopes
   */
  private record Tried(
      String entry, double upMm, Figure before, Figure after, Optional<Figure> moreMm) {}

  /** In words. */
  Shim shim(ToeWords words) {
    Optional<Tried> last = last();
    Optional<Figure> upMm = last.isEmpty() ? byJoints() : Optional.empty();
    if (upMm.isPresent()) {
      return new Shim(
          null,
          "None was tried. By the joints the outer end wants to lie "
              + words.lengths().figure(upMm.get().times(Math.signum(upMm.get().value()))).words()
              + (upMm.get().value() < 0 ? " lower" : " higher")
              + " for no bump steer as laid out, toe set again. This is modelled: a shim tried and"
              + " read tells it better.",
          null);
    }
    if (last.isEmpty()) {
      return new Shim(
          null,
          "None was tried. Change the shim under the outer tie-rod end by a known thickness, put"
              + " that in the book, set toe at ride again and read toe along the travel: this page"
              + " then says how much more takes the slope out. Whether more shim lifts the end or"
              + " lowers it depends on which side of the steering arm it sits.",
          null);
    }
    Tried tried = last.get();
    return new Shim(
        tried.moreMm().map(words.lengths()::signedFigure).orElse(null),
        said(words, tried),
        tried.entry());
  }

  /** How much higher the outer end would lie with no bump steer at the joints' height. */
  private Optional<Figure> byJoints() {
    return CornerModel.of(card, book.mirror(card))
        .flatMap(
            model ->
                ModelFigure.of(
                    model.linkage(),
                    model.coordinates(),
                    at ->
                        WorkBack.noBumpSteer(at.joints(), OUTER_END_UP, MOST_MM)
                            .orElse(Double.NaN)));
  }

  private static String said(ToeWords words, Tried tried) {
    String by = words.lengths().signedText(tried.upMm());
    if (tried.before() == null || tried.after() == null) {
      return by
          + " was tried. To say how much more, toe at three places or more and ride height are"
          + " needed "
          + (tried.before() == null ? "from before it; they were not read then." : "since it.");
    }
    String slopes =
        by
            + " took the slope from "
            + words.slopeWords(tried.before())
            + " to "
            + words.slopeWords(tried.after())
            + ".";
    return tried.moreMm().isEmpty()
        ? slopes + " That change is within its ±: try a thicker one, or read toe again."
        : slopes
            + " + is more shim, − is less. Taken as a straight line; set toe at ride again, then"
            + " read.";
  }

  /**
   * Changes in a row without toe read between them count as one. Empty where no shim was changed by
   * a known thickness.
   */
  private Optional<Tried> last() {
    List<Change> changes =
        card.adjuster(AdjusterKind.TIE_ROD_SHIM).map(this::changes).orElse(List.of());
    double upMm = 0;
    for (Change change : changes) {
      upMm += upMm(change).orElseThrow();
      Optional<Figure> before = slope(book.asOf(change.n() - 1).card(card.corner()));
      if (before.isPresent() && upMm != 0) {
        return Optional.of(tried(changes.get(0), upMm, before.get()));
      }
    }
    return changes.isEmpty() || upMm == 0
        ? Optional.empty()
        : Optional.of(tried(changes.get(0), upMm, null));
  }

  /** Of a known thickness, the last first, back to one that is not. */
  private List<Change> changes(InForce shim) {
    return card.changes().stream()
        .filter(c -> shim.adjuster().adjuster().equals(c.adjuster()) && c.place() == card.place())
        .sorted(Comparator.comparingLong(Change::n).reversed())
        .takeWhile(c -> upMm(c).isPresent())
        .limit(MOST_CHANGES)
        .toList();
  }

  private Tried tried(Change last, double upMm, Figure before) {
    Figure after = slope(card).orElse(null);
    Optional<Figure> more =
        before == null || after == null ? Optional.empty() : ShimTried.moreMm(before, after, upMm);
    return new Tried("/entries/" + last.key(), upMm, before, after, more);
  }

  /** What the entry says now, a correction of it counted. */
  private Optional<Double> upMm(Change change) {
    return book.standing(change.key(), Content.Adjustment.class)
        .filter(a -> length(a.from()) && length(a.to()))
        .map(a -> a.to().amount() - a.from().amount());
  }

  private static boolean length(Setting setting) {
    return setting != null && setting.unit() == SettingUnit.LENGTH;
  }

  /** Toe read as a length counts across what is given today, also before the shim. */
  private Optional<Figure> slope(Card at) {
    CurveRead read =
        CurveRead.of(
            at, Curved.TOE, Steering.STRAIGHT, at.pairings().get(0), ToeRead.acrossMm(card));
    if (!read.angle() || Node.merge(read.nodes()).size() < PLACES) {
      return Optional.empty();
    }
    BumpSteer steer = new BumpSteer(read.nodes());
    CornerChart chart = new CornerChart(at);
    return chart.travel().rideMm().isEmpty()
        ? Optional.empty()
        : steer.shape(steer.read(), chart.zero().mm()).map(BumpShape::slope);
  }
}
