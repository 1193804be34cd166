package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.DriveCheck.Checked;
import spindlebook.card.Zero;
import spindlebook.entry.Content;
import spindlebook.entry.SignedCorner;
import spindlebook.entry.SignedThing;
import spindlebook.finding.CornerFigure;
import spindlebook.finding.Finding;
import spindlebook.finding.Finding.Group;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Standing;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.JointSwing;
import spindlebook.ride.CornerRide;
import spindlebook.ride.RideFinding;
import spindlebook.travel.End;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;

/** The copy of a car that a sign-off keeps: figures, settings, rules, limits, and what was open. */
public final class SignOffCopy {
  /** A tenth of a micrometre: so that it reads well by hand and is the same on any machine. */
  private static final double STEP_MM = 1e-4;

  /** As much across a metre and more. */
  private static final double STEP_RAD = 1e-8;

  private static final String MID_TRAVEL = "mid-travel";

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
                    line.thing().why().keptAs(),
                    check.corner(line.thing().corner()).map(c -> c.card().place()).orElse(null),
                    line.words()))
        .toList();
  }

  private static SignedCorner corner(Checked checked, Optional<Card> mirror) {
    Card card = checked.card();
    Findings findings = Findings.of(card, mirror, false);
    Zero zero = Zero.of(card, checked.travel());
    List<SignedCorner.Swing> swings =
        JointSwing.of(card, mirror).stream().map(SignOffCopy::swing).toList();
    return new SignedCorner(
        card.corner(),
        card.place(),
        checked.travel().outcome().keptAs(),
        rounded(zero.mm(), STEP_MM),
        zero.words(),
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
        Arrays.stream(CornerFigure.values())
            .map(findings::of)
            .filter(f -> f.figure() != null)
            .map(SignOffCopy::figure)
            .toList(),
        findings.all(Group.LIMIT, Group.MID_TRAVEL).stream().map(SignOffCopy::limit).toList(),
        // What belongs to the axle once, at its left wheel.
        findings.all(Group.ALIGNMENT).stream()
            .map(Findings::aligned)
            .filter(f -> f.value() != null || f.target() != null)
            .filter(f -> !f.figure().thing().ofAxle() || card.place().left() || mirror.isEmpty())
            .map(SignOffCopy::aligned)
            .toList(),
        card.springs().any()
            ? CornerRide.of(card).findings().stream().map(SignOffCopy::ride).toList()
            : null,
        swings.isEmpty() ? null : swings);
  }

  private static SignedCorner.Swing swing(JointSwing of) {
    return new SignedCorner.Swing(
        of.joint(),
        rounded(of.worst().value(), STEP_RAD),
        rounded(of.worst().U(), STEP_RAD),
        of.stands() == null ? null : of.stands().keptAs(),
        of.allows() == null ? null : of.allows().words(),
        of.outcome() == null ? null : of.outcome().keptAs());
  }

  /** A part on one side of ride is kept without its 'at least'. */
  private static SignedCorner.Figure figure(Finding of) {
    boolean part = of.group() == Group.TOTAL && of.end() != null;
    return new SignedCorner.Figure(
        CornerFigure.valueOf(of.id()).keptAs(),
        of.isPlace(),
        value(of.figure(), STEP_MM),
        expanded(of.figure(), STEP_MM),
        of.atLeast() && !part);
  }

  private static SignedCorner.Limit limit(Finding of) {
    return new SignedCorner.Limit(
        of.name(),
        of.end() == null ? MID_TRAVEL : of.end().words(),
        of.verdict().keptAs(),
        value(of.position(), STEP_MM),
        expanded(of.position(), STEP_MM),
        value(of.figure(), STEP_MM),
        expanded(of.figure(), STEP_MM));
  }

  private static SignedCorner.Aligned aligned(AlignedFinding found) {
    double step = found.figure().angle() ? STEP_RAD : STEP_MM;
    return new SignedCorner.Aligned(
        found.figure(),
        value(found.value(), step),
        expanded(found.value(), step),
        found.value() == null ? null : found.stands().keptAs(),
        found.target() == null ? null : found.target().content().inWords(),
        found.target() == null ? null : found.outcome().keptAs());
  }

  private static SignedCorner.Ride ride(RideFinding found) {
    return new SignedCorner.Ride(
        found.figure(),
        found.of(),
        found.called(),
        found.counted(),
        value(found.value(), STEP_MM),
        expanded(found.value(), STEP_MM),
        found.stands() == null ? null : found.stands().keptAs(),
        found.outcome() == null ? null : found.outcome().keptAs());
  }

  private static Double value(Figure figure, double step) {
    return figure == null ? null : rounded(figure.value(), step);
  }

  private static Double expanded(Figure figure, double step) {
    return figure == null ? null : rounded(figure.U(), step);
  }

  private static double rounded(double value, double step) {
    // + 0.0: a zero without a sign.
    return Math.rint(value / step) / Math.rint(1 / step) + 0.0;
  }

  // --- read back

  /** What a copy says of a corner, as the one list says it: with U alone, and no readings. */
  static List<Finding> findings(SignedCorner kept) {
    List<Finding> all = new ArrayList<>();
    all.add(decided(Group.RULES_END, null, "the corner", "the corner", kept.outcome(), null, null));
    kept.figures().forEach(f -> all.add(figure(f)));
    kept.limits()
        .forEach(
            l ->
                all.add(
                    decided(
                        l.end().equals(MID_TRAVEL) ? Group.MID_TRAVEL : Group.LIMIT,
                        end(l.end()),
                        l.end() + ": " + l.what(),
                        l.what(),
                        l.outcome(),
                        figure(l.roomMm(), l.roomExpandedMm()),
                        figure(l.mm(), l.expandedMm()))));
    for (SignedCorner.SetTo s : kept.settings()) {
      String to = s.to() == null ? "not said" : s.to();
      all.add(Finding.of(Group.SETTING, null, s.adjuster(), s.name()).says(to, to));
    }
    kept.rules()
        .forEach(
            r -> all.add(Finding.of(Group.RULE, null, r.of(), r.name()).says(r.says(), r.says())));
    if (kept.alignment() != null) {
      kept.alignment().forEach(a -> all.add(aligned(a)));
    }
    if (kept.springs() != null) {
      kept.springs().forEach(r -> all.add(ride(r)));
    }
    if (kept.swings() != null) {
      kept.swings()
          .forEach(
              s ->
                  all.add(
                      Findings.swing(s.joint(), figure(s.rad(), s.expandedRad()), null, s.allows())
                          .decided(outcome(s.outcome()), stands(s.stands()))));
    }
    return all;
  }

  private static End end(String word) {
    return one(End.values(), e -> e.words().equals(word)).orElse(null);
  }

  private static <T> Optional<T> one(T[] of, Predicate<T> which) {
    return Arrays.stream(of).filter(which).findFirst();
  }

  private static Figure figure(Double value, Double expanded) {
    return value == null
        ? null
        : Figure.of(
            value,
            new Source("kept", SourceKind.PLACING),
            expanded == null ? 0 : expanded / Figure.K);
  }

  private static Finding figure(SignedCorner.Figure kept) {
    Optional<CornerFigure> of = one(CornerFigure.values(), f -> f.keptAs().equals(kept.name()));
    Figure figure = figure(kept.mm(), kept.expandedMm());
    return Finding.of(
            of.map(CornerFigure::group).orElse(kept.position() ? Group.STOP : Group.TOTAL),
            of.map(CornerFigure::end).orElse(null),
            of.map(Enum::name).orElse(kept.name()),
            kept.name())
        .figure(figure, kept.position() ? figure : null)
        .unsure(null, kept.atLeast() ? "at least so much" : null);
  }

  /** Words that no outcome has today stay as they were kept. */
  private static Finding decided(
      Group group, End end, String id, String name, String outcome, Figure figure, Figure at) {
    Outcome verdict = outcome(outcome);
    String says = verdict == null || verdict == Outcome.NEEDS ? outcome : "";
    return Finding.of(group, end, id, name)
        .figure(figure, at)
        .decided(verdict, null)
        .says(says, says);
  }

  private static Outcome outcome(String words) {
    return one(Outcome.values(), o -> o.keptAs().equals(words)).orElse(null);
  }

  private static Finding aligned(SignedCorner.Aligned kept) {
    Figure value = figure(kept.value(), kept.expanded());
    String target = kept.target() == null ? "" : "target " + kept.target();
    return Finding.of(Group.ALIGNMENT, null, kept.figure().name(), kept.figure().words())
        .figure(value, null)
        .decided(outcome(kept.outcome()), stands(kept.stands()))
        .says(
            value != null ? target : (target.isEmpty() ? "" : target + ", ") + Findings.NOT_KNOWN,
            target);
  }

  private static Standing stands(String words) {
    return one(Standing.values(), s -> s != Standing.LIVE && s.keptAs().equals(words)).orElse(null);
  }

  private static Finding ride(SignedCorner.Ride kept) {
    Figure value = figure(kept.value(), kept.expanded());
    RideFinding found =
        new RideFinding(
            kept.figure(),
            kept.of(),
            kept.called(),
            value,
            null,
            outcome(kept.outcome()),
            stands(kept.stands()),
            kept.counted(),
            List.of());
    return Findings.of(found);
  }
}
