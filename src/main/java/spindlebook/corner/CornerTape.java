package spindlebook.corner;

import static spindlebook.drawing.TapeSheet.FIGURE;
import static spindlebook.drawing.TapeSheet.FILLS;
import static spindlebook.drawing.TapeSheet.SMALL;
import static spindlebook.drawing.TapeSheet.WORDS;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.CureAddress;
import spindlebook.card.NeedAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.State;
import spindlebook.drawing.Steer;
import spindlebook.drawing.TapeFace;
import spindlebook.drawing.TapeSheet;
import spindlebook.drawing.TapeSheet.Line;
import spindlebook.drawing.TapeSheet.Note;
import spindlebook.drawing.TextWidth;
import spindlebook.fold.Card;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Limit;
import spindlebook.travel.StopFound;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

/**
 * The tape of a corner: stops come in from the left, limits from the right, what is set stands left
 * and what limits right; between them what is usable, held back, past a limit and out of reach.
 */
public final class CornerTape {
  private static final double SHORTEST = 540;
  private static final double TALLEST = 1100;
  private static final double EDGE = 10;
  private static final double TAPE_FROM = 35;
  private static final double TAPE_WIDE = 23.6;
  private static final double LEFT = 1;
  private static final double LEFT_WIDE = 31;
  private static final double RIGHT = 62.5;
  private static final double RIGHT_WIDE = 36;

  /** The right column on a narrow phone, in sixteenths of the text size. */
  private static final double NARROW = 118;

  private static final double KEY = 54;
  private static final double TOTAL = 34 + 2 * SMALL;
  private static final int MOST_STEPS = 6;

  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final boolean toLookAt;
  private final List<Line> lines = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private TapeFace face;
  private double height;

  /** How far inward each column's labels reach, at bump and at droop. */
  private double bumpLeft;

  private double bumpRight;
  private double droopLeft;
  private double droopRight;

  /** How far the labels of each column step aside, outward, so that those of the ends part. */
  private double asideLeft;

  private double asideRight;

  private CornerTape(Card card, TravelFindings travel, TravelWords words, boolean toLookAt) {
    this.card = card;
    this.travel = travel;
    this.words = words;
    this.toLookAt = toLookAt;
  }

  /** Empty when no wheel position is known. */
  public static Optional<TapeSheet> of(
      Card card, TravelFindings travel, TravelWords words, boolean toLookAt) {
    CornerTape tape = null;
    Optional<TapeSheet> sheet = Optional.empty();
    for (double height = SHORTEST; height <= TALLEST; height *= 1.2) {
      double asideLeft = 0;
      double asideRight = 0;
      for (int step = 0; step < MOST_STEPS; step++) {
        tape = new CornerTape(card, travel, words, toLookAt);
        tape.asideLeft = asideLeft;
        tape.asideRight = asideRight;
        sheet = tape.sheet(height);
        if (sheet.isEmpty() || tape.overLeft() <= 0 && tape.overRight() <= 0) {
          return sheet;
        }
        // Half to each end; where one cannot give way, all of it is left to the other.
        double share = step < 2 ? 0.5 : 1;
        asideLeft += Math.max(0, tape.overLeft()) * share;
        asideRight += Math.max(0, tape.overRight()) * share;
      }
    }
    return sheet;
  }

  /** By how much the labels of both ends meet, or crowd the travel between them, at the left. */
  private double overLeft() {
    return bumpLeft + (travel.asSet().mm().isPresent() ? TOTAL + 8 : 0) - droopLeft;
  }

  private double overRight() {
    return bumpRight - droopRight;
  }

  private Optional<TapeSheet> sheet(double tall) {
    height = tall;
    droopLeft = tall;
    droopRight = tall;
    face = CornerFace.of(card, travel, words, true, tall - 2 * EDGE, 92).orElse(null);
    if (face == null) {
      return Optional.empty();
    }
    double bumpStop = end(travel.bump());
    double droopStop = end(travel.droop());
    ride();
    total(bumpStop, droopStop);
    return Optional.of(
        new TapeSheet(
            "Travel of the "
                + card.place().words()
                + ". "
                + words.finding(travel.droop())
                + " "
                + words.finding(travel.bump()),
            height,
            TAPE_FROM,
            TAPE_WIDE,
            face,
            EDGE,
            lines,
            notes,
            keyTop()));
  }

  /** Under the ride line or over it, where the labels leave that much. */
  private Double keyTop() {
    double ride = travel.rideMm().map(r -> y(r.value())).orElse(bumpRight);
    return droopRight - Math.max(ride, bumpRight) >= FILLS + 16
        ? (Double) (Math.max(ride, bumpRight) + 8)
        : ride - FIGURE - bumpRight >= FILLS + 16 ? (Double) (bumpRight + 8) : null;
  }

  private double y(double mm) {
    return EDGE + face.at(words.zero().from(mm));
  }

  /** Its height, from the end outward positive; so both ends are laid out by one rule. */
  private double out(EndFindings end, double y) {
    return end.end() == End.DROOP ? y : height - y;
  }

  /** Draws one end; says where its stop's line is, or the tape's end. */
  private double end(EndFindings end) {
    boolean droop = end.end() == End.DROOP;
    double left = height - 2;
    double stopLine = droop ? height - EDGE : EDGE;
    Optional<Figure> reach =
        end.reachMm().filter(r -> end.heldBack().orElseThrow().mm().value() > 0);
    if (reach.isPresent()) {
      double at = y(reach.get().value());
      double shelf = Math.min(out(end, at) + asideLeft, left - FIGURE - SMALL);
      shelf(end, shelf, at, true, "l");
      lines.add(new Line("l", null, TAPE_FROM - 1, at, 59.6, at));
      notes.add(
          left(end, "note-out", droop ? shelf + 2 : shelf, FIGURE + SMALL)
              .figure(words.position(reach.get()), "t2")
              .words("", droop ? "strap stretched" : "with impact")
              .href(rests(end)));
      left = shelf - (droop ? SMALL : 4);
    }
    if (end.stop().isPresent()) {
      stopLine = stop(end, end.stop().get(), left);
    }
    limit(end);
    return stopLine;
  }

  private String rests(EndFindings end) {
    return toLookAt ? null : "/corners/" + card.corner() + "/limits#" + end.end().words();
  }

  private double stop(EndFindings end, StopFound stop, double most) {
    boolean droop = end.end() == End.DROOP;
    double at = y(stop.positionMm().value());
    double shelf = Math.min(out(end, at) + asideLeft, most - (droop ? 2 : FIGURE));
    shelf(end, shelf, at, true, "l");
    bar("l-stop", at, TAPE_FROM - 1.5, TAPE_FROM + 8);
    String sub =
        stop.notConfirmed()
            ? State.PUT_BACK.word()
            : stop.computed() ? "solid, worked out" : droop ? "" : "solid";
    double wordsTall = WORDS + (sub.isEmpty() ? 0 : SMALL * lines(sub, 14, 100));
    double inward = shelf;
    notes.add(
        left(end, "", droop ? shelf - FIGURE : shelf, FIGURE)
            .figure(words.position(stop.positionMm()), "t3")
            .href(rests(end)));
    inward -= droop ? FIGURE : 0;
    inward -= wordsTall;
    notes.add(left(end, "", inward, wordsTall).words(droop ? "strap" : "bump stop", sub));
    String cure = toLookAt ? "" : words.cureKey(end);
    if (!cure.isEmpty()) {
      String does = words.cureDoes(end);
      double tall = 14 + WORDS * lines(cure, 17, 84) + SMALL * lines(does, 14, 84);
      inward -= tall + 8;
      notes.add(
          left(end, droop ? "note-key note-foot" : "note-key", inward, tall)
              .words(cure, does)
              .href(CureAddress.of(card, end.cure().orElseThrow())));
    }
    reach(end, true, inward);
    return droop ? shelf : height - shelf;
  }

  /** How far inward a column is taken. */
  private void reach(EndFindings end, boolean left, double inward) {
    if (end.end() == End.DROOP) {
      droopLeft = left ? inward : droopLeft;
      droopRight = left ? droopRight : inward;
    } else {
      bumpLeft = left ? height - inward : bumpLeft;
      bumpRight = left ? bumpRight : height - inward;
    }
  }

  private void limit(EndFindings end) {
    boolean droop = end.end() == End.DROOP;
    double inward = height - 2;
    boolean past = end.outcome() == Outcome.SHORT;
    Optional<Figure> margin = end.roomMm();
    boolean told = margin.isPresent() || past;
    Optional<Limit> rules = end.rules();
    String tone = Shown.state(end.outcome()).mark();
    double marginTall = told ? marginTall(end, past) : 0;
    if (rules.isPresent()) {
      Limit limit = rules.get();
      boolean soFar = !end.needs().isEmpty() && limit.outcome() == Outcome.CLEAR;
      String of =
          soFar || limit.outcome() == Outcome.CLEAR ? "" : Shown.state(limit.outcome()).mark();
      double at = y(limit.positionMm().value());
      double shelf =
          Math.min(out(end, at) + asideRight, inward - (droop ? marginTall + 4 : FIGURE));
      shelf(end, shelf, at, false, "l " + of);
      bar("l-limit " + of, at, TAPE_FROM + 13, TAPE_FROM + TAPE_WIDE + 1);
      bracket(limit.positionMm());
      notes.add(
          right(end, of, droop ? shelf - FIGURE : shelf, FIGURE)
              .figure(words.position(limit.positionMm()), "t3")
              .href(rests(end)));
      inward = droop ? shelf - FIGURE : shelf;
      Steer lock = TravelWords.steer(limit);
      String name =
          (lock == null ? words.name(limit) : words.pointName(limit)) + (soFar ? ", so far" : "");
      String turned = lock == null ? "" : lock.word();
      double tall =
          WORDS * lines(name, 17, NARROW - (of.isEmpty() ? 0 : 20)) + (lock == null ? 0 : WORDS);
      inward -= tall;
      notes.add(
          right(end, of, inward, tall)
              .words(name, turned)
              .state(of.isEmpty() ? null : Shown.state(limit.outcome()), lock));
      if (droop && told) {
        margin(end, margin, shelf + marginTall + 4, past, tone);
      }
    }
    if (told && (rules.isEmpty() || !droop)) {
      inward -= marginTall + 4;
      margin(end, margin, inward + marginTall, past, tone);
    }
    if (margin.isPresent()
        && end.reachMm().isPresent()
        && rules.isPresent()
        && rules.get().outcome() == end.outcome()) {
      double one = y(rules.get().positionMm().value());
      double other = y(end.reachMm().get().value());
      lines.add(new Line("l l-dim " + tone, "arrow", 61.2, one, 61.2, other));
    }
    if (end.outcome() == Outcome.NEEDS) {
      String needs = end.needs().isEmpty() ? "" : words.needsBrief(end.needs());
      if (!needs.isEmpty()) {
        double tall = 14 + WORDS * lines(needs, 17, NARROW - 56);
        tall = Math.max(tall, KEY);
        inward -= tall + 6;
        notes.add(
            right(end, "note-key note-unknown", inward, tall)
                .words(needs, "")
                .href(toLookAt ? null : NeedAddress.of(card.corner(), words, end.needs())));
      }
    }
    reach(end, false, inward);
  }

  private double marginTall(EndFindings end, boolean past) {
    return (past ? 34 : FIGURE)
        + WORDS * lines(words.roomWord(end), 17, NARROW - 20)
        + (about(end).isEmpty() ? 0 : SMALL * lines(about(end), 14, NARROW));
  }

  /** What is broken, or cannot be told, where no limit was found to name. */
  private String about(EndFindings end) {
    boolean named = end.outcome() == Outcome.CANT_TELL || end.outcome() == Outcome.SHORT;
    return named && end.rules().isEmpty()
        ? words.name(
            end.limits().stream()
                .filter(l -> l.outcome() == end.outcome())
                .findFirst()
                .orElseThrow())
        : "";
  }

  private void margin(
      EndFindings end, Optional<Figure> margin, double outer, boolean past, String tone) {
    double tall = marginTall(end, past);
    notes.add(
        right(end, "note-margin " + tone, outer - tall, tall)
            .figure(margin.map(m -> words.roomSize(end, m)).orElse(null), past ? "t4" : "t3")
            .words(words.roomWord(end), about(end))
            .state(Shown.state(end.outcome()), null)
            .href(rests(end)));
  }

  /** Words are bold, what stands under them is not. */
  private static int lines(String text, double size, double width) {
    return TextWidth.wrap(text, size, size > 14, width, 9).size();
  }

  private void bracket(Figure mm) {
    double one = y(mm.value() + mm.U());
    double other = y(mm.value() - mm.U());
    if (other - one > 4) {
      lines.add(new Line("l", null, 60.2, one, 60.2, other));
      lines.add(new Line("l", null, 59.4, one, 61, one));
      lines.add(new Line("l", null, 59.4, other, 61, other));
    }
  }

  private void bar(String mark, double y, double from, double to) {
    lines.add(new Line("l-case", null, from, y, to, y));
    lines.add(new Line(mark, null, from, y, to, y));
  }

  /** A label's line, and the way from it to its mark where it had to step aside. */
  private void shelf(EndFindings end, double outward, double at, boolean left, String mark) {
    double y = end.end() == End.DROOP ? outward : height - outward;
    double near = left ? TAPE_FROM - 3.2 : RIGHT;
    lines.add(new Line(mark, null, left ? LEFT : 98.5, y, near, y));
    lines.add(new Line(mark, null, near, y, left ? TAPE_FROM - 1 : 60, at));
  }

  /** A label in the left column, its inner edge so far out. */
  private Note left(EndFindings end, String mark, double inward, double tall) {
    return Note.at("note-left " + mark, LEFT, top(end, inward, tall), LEFT_WIDE, tall);
  }

  private Note right(EndFindings end, String mark, double inward, double tall) {
    return Note.at(mark, RIGHT, top(end, inward, tall), RIGHT_WIDE, tall);
  }

  private double top(EndFindings end, double inward, double tall) {
    return end.end() == End.DROOP ? inward : height - inward - tall;
  }

  private void ride() {
    travel
        .rideMm()
        .ifPresent(
            r -> {
              double y = y(r.value());
              lines.add(new Line("l-ride-on", null, TAPE_FROM, y, TAPE_FROM + TAPE_WIDE, y));
              lines.add(new Line("l-ride", null, TAPE_FROM + TAPE_WIDE, y, 98.5, y));
              if (bumpRight < y - FIGURE && droopRight > y + 4) {
                notes.add(
                    Note.at("note-ride", RIGHT, y - FIGURE, RIGHT_WIDE, FIGURE).words("ride", "0"));
              }
            });
  }

  private void total(double bumpStop, double droopStop) {
    Total set = travel.asSet();
    if (set.mm().isEmpty()) {
      return;
    }
    lines.add(new Line("l", "arrow", 33.6, bumpStop + 4, 33.6, droopStop - 4));
    double middle =
        Math.max(
            bumpLeft + 4, Math.min(droopLeft - TOTAL - 4, (bumpStop + droopStop) / 2 - TOTAL / 2));
    String within = words.lengths().plusMinus(set.mm().get().U());
    notes.add(
        Note.at("note-left", LEFT, middle, LEFT_WIDE, TOTAL)
            .figure(words.lengths().figure(set.mm().get().value()), "t4")
            .words("", "± " + within + (set.atLeast() ? " at least" : "") + ", stop to stop"));
  }
}
