package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import spindlebook.alignment.AlignedFinding;
import spindlebook.alignment.MeasuredAlignment;
import spindlebook.card.TravelWords;
import spindlebook.entry.Content;
import spindlebook.entry.SignedCorner;
import spindlebook.entry.SignedThing;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.page.Posted;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.DriveCheck.Checked;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Total;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/** The copy of a car that a sign-off keeps: figures, settings, rules, limits, and what was open. */
public final class SignOffCopy {
  /** A tenth of a micrometre: so that it reads well by hand and is the same on any machine. */
  private static final double STEP_MM = 1e-4;

  /** As much across a metre and more. */
  private static final double STEP_RAD = 1e-8;

  private SignOffCopy() {}

  /**
   * Of the book as it stands.
   *
   * @param hash of the line of the book's last entry; null where it is not known
   * @param why it is signed all the same; null where nobody said
   */
  public static Content.SignOff of(CarBook book, DriveCheck check, String hash, String why) {
    return new Content.SignOff(
        book.car().orElseThrow(),
        check.n(),
        hash,
        book.details().orElseThrow().unit(),
        corners(check),
        open(book, check),
        why);
  }

  /** The corners alone, to hold against a copy that was kept. */
  public static List<SignedCorner> corners(DriveCheck check) {
    return check.corners().stream().map(c -> corner(c, mirror(check, c))).toList();
  }

  /**
   * The corners of a kept copy, computed anew today from the entries it was made of: as much of
   * them as was kept then.
   */
  public static List<SignedCorner> anew(CarBook book, Content.SignOff kept) {
    Set<String> withoutAlignment =
        kept.corners().stream()
            .filter(c -> c.alignment() == null)
            .map(SignedCorner::corner)
            .collect(Collectors.toSet());
    return corners(DriveCheck.of(book.asOf(kept.n()))).stream()
        .map(c -> withoutAlignment.contains(c.corner()) ? c.withoutAlignment() : c)
        .toList();
  }

  /** Whether what is computed anew is what was kept. */
  public static boolean sameToday(CarBook book, Content.SignOff kept) {
    return withOneMinus(anew(book, kept)).equals(withOneMinus(kept.corners()));
  }

  static List<SignedCorner> withOneMinus(List<SignedCorner> corners) {
    return corners.stream().map(SignedCorner::withOneMinus).toList();
  }

  /** The other wheel of the axle; empty where the car has none. */
  static Optional<Card> mirror(DriveCheck check, Checked of) {
    return check.corners().stream()
        .map(Checked::card)
        .filter(c -> c.place() == of.card().place().mirror())
        .findFirst();
  }

  static List<SignedThing> open(CarBook book, DriveCheck check) {
    return CheckWords.of(book, check).stream()
        .map(
            line ->
                new SignedThing(
                    line.thing().why().words(),
                    check.corner(line.thing().corner()).map(c -> c.card().place()).orElse(null),
                    line.words()))
        .toList();
  }

  private static SignedCorner corner(Checked checked, Optional<Card> mirror) {
    Card card = checked.card();
    TravelWords words = new TravelWords(card, checked.travel());
    return new SignedCorner(
        card.corner(),
        card.place(),
        checked.travel().outcome().words(),
        rounded(words.zero().mm()),
        words.zero().words(),
        card.adjusters().stream()
            .map(
                a ->
                    new SignedCorner.SetTo(
                        a.adjuster().adjuster(),
                        a.adjuster().name(),
                        a.setting() == null ? null : a.setting().inWords()))
            .toList(),
        Findings.rules(card).stream()
            .map(r -> new SignedCorner.Rule(r.id(), r.name(), r.says()))
            .toList(),
        figures(checked),
        limits(checked, words),
        alignment(card, mirror));
  }

  private static List<SignedCorner.Figure> figures(Checked checked) {
    List<SignedCorner.Figure> figures = new ArrayList<>();
    var travel = checked.travel();
    total(figures, "usable travel, as set", travel.asSet());
    total(figures, "usable travel, as it could be", travel.asItCouldBe());
    add(figures, SignedWords.RIDE, false, travel.rideMm(), false);
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      String name = end.end() == End.DROOP ? "droop: " : "bump: ";
      String stop = end.end() == End.DROOP ? "strap stops the wheel at" : "stop is solid at";
      add(figures, name + stop, true, end.stop().map(s -> s.positionMm()), false);
      add(figures, name + "held back", false, end.heldBack().map(h -> h.mm()), false);
      add(figures, name + "margin", false, end.marginMm(), end.marginAtLeast());
    }
    return figures;
  }

  private static void total(List<SignedCorner.Figure> figures, String name, Total total) {
    add(figures, name, false, total.mm(), total.atLeast());
    add(figures, name + ", below ride", false, total.droopMm(), false);
    add(figures, name + ", above ride", false, total.bumpMm(), false);
  }

  private static void add(
      List<SignedCorner.Figure> figures,
      String name,
      boolean position,
      Optional<Figure> figure,
      boolean atLeast) {
    figure.ifPresent(
        f ->
            figures.add(
                new SignedCorner.Figure(
                    name, position, rounded(f.value()), rounded(f.U()), atLeast)));
  }

  private static List<SignedCorner.Limit> limits(Checked checked, TravelWords words) {
    List<SignedCorner.Limit> limits = new ArrayList<>();
    for (EndFindings end : List.of(checked.travel().droop(), checked.travel().bump())) {
      for (Limit limit : end.limits()) {
        limits.add(
            new SignedCorner.Limit(
                words.name(limit),
                Posted.word(end.end()),
                limit.outcome().words(),
                value(limit.positionMm()),
                expanded(limit.positionMm()),
                value(limit.roomMm()),
                expanded(limit.roomMm())));
      }
    }
    for (MidTravel mid : checked.travel().midTravel()) {
      limits.add(
          new SignedCorner.Limit(
              words.name(mid),
              "mid-travel",
              mid.outcome().words(),
              value(mid.shortfall().fromMm()),
              expanded(mid.shortfall().fromMm()),
              null,
              null));
    }
    return limits;
  }

  // --- alignment

  /** What is known, or wanted; what belongs to the axle once, at its left wheel. */
  private static List<SignedCorner.Aligned> alignment(Card card, Optional<Card> mirror) {
    return new MeasuredAlignment(card, mirror)
        .findings().stream()
            .filter(f -> f.value() != null || f.target() != null)
            .filter(f -> !f.figure().thing().ofAxle() || card.place().left() || mirror.isEmpty())
            .map(SignOffCopy::aligned)
            .toList();
  }

  private static SignedCorner.Aligned aligned(AlignedFinding found) {
    boolean known = found.value() != null;
    double step = found.figure().angle() ? STEP_RAD : STEP_MM;
    return new SignedCorner.Aligned(
        found.figure(),
        known ? rounded(found.value().value(), step) : null,
        known ? rounded(found.value().U(), step) : null,
        known ? found.stands().words() : null,
        found.target() == null ? null : found.target().target().inWords(),
        found.target() == null ? null : outcome(found));
  }

  private static String outcome(AlignedFinding found) {
    return found.against() == null
        ? Outcome.NEEDS.words()
        : Outcome.valueOf(found.against().decision().name()).words();
  }

  private static Double value(Figure figure) {
    return figure == null ? null : rounded(figure.value());
  }

  private static Double expanded(Figure figure) {
    return figure == null ? null : rounded(figure.U());
  }

  private static double rounded(double mm) {
    return rounded(mm, STEP_MM);
  }

  private static double rounded(double value, double step) {
    // + 0.0: a zero without a sign.
    return Math.rint(value / step) / Math.rint(1 / step) + 0.0;
  }
}
