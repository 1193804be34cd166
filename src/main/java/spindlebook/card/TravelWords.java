package spindlebook.card;

import java.util.ArrayList;
import java.util.List;
import spindlebook.advice.NextReading;
import spindlebook.definition.WatchPoint;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.drawing.Steer;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.finding.Finding;
import spindlebook.finding.Findings;
import spindlebook.finding.LimitNames;
import spindlebook.fold.Card;
import spindlebook.travel.Cure;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.Shortfall;
import spindlebook.travel.StopFound;
import spindlebook.travel.TravelFindings;
import spindlebook.travel.UnreadReach;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;
import spindlebook.uncertainty.Settles;

/** What travel's findings are called, in the trade's words and the owner's unit. */
public final class TravelWords {
  private final Card card;
  private final TravelFindings travel;
  private final Lengths lengths;
  private final Zero zero;
  private final SettleWords settle;
  private final LimitNames names;

  public TravelWords(Card card, TravelFindings travel) {
    this.card = card;
    this.travel = travel;
    this.lengths = new Lengths(card.details().unit());
    this.zero = Zero.of(card, travel);
    this.settle = new SettleWords(card);
    this.names = new LimitNames(card, travel);
  }

  /** What an end is made of, in the order in which it adds up. */
  public List<Finding> found(End end) {
    return Findings.ofEnd(card, travel, end);
  }

  public Lengths lengths() {
    return lengths;
  }

  /** A wheel position from the page's zero, with its ±. */
  public FigureText position(Figure mm) {
    FigureText text = FigureText.of(lengths.signed(zero.from(mm)), lengths.unit().word());
    return mm.U() > 0 ? text.within(lengths.plusMinus(mm.U())) : text;
  }

  /** "inches from ride". */
  public String inUnit() {
    return lengths.unit().many() + " " + zero.words();
  }

  /** What positions are counted from, one sentence. */
  public String positions() {
    return "Positions are " + zero.words() + ", + towards bump.";
  }

  public Zero zero() {
    return zero;
  }

  /** "Tie rod to upper arm, full right". */
  public String name(Limit limit) {
    return names.of(limit);
  }

  /** An angle gets too much, a gap too close; null is no watch point. */
  public static String past(WatchPoint point) {
    return point != null && point.keep().mostAngle() != null ? "too much" : "too close";
  }

  /** "too close past −8 3/8 in ± 5/16, full right". */
  public String broken(Limit limit) {
    String where =
        limit.at() instanceof EndLimit.BrokenThroughout
            ? " at every height read"
            : " past " + position(limit.positionMm()).words();
    Steer lock = steer(limit);
    return past(limit.point()) + where + (lock == null ? "" : ", " + lock.word());
  }

  /** The same without the lock: "tie rod to upper arm". */
  public String pointName(Limit limit) {
    return limit.point() == null
        ? name(limit)
        : limit.point().name() + LimitNames.pairing(limit.pairing());
  }

  public String name(MidTravel mid) {
    return names.of(mid);
  }

  /** One sentence on an end: what is wrong, or what rules. */
  public String finding(EndFindings end) {
    return where(end.end())
        + switch (end.outcome()) {
          case SHORT -> shortfall(end, first(end, Outcome.SHORT));
          case CANT_TELL -> {
            Limit first = first(end, Outcome.CANT_TELL);
            yield end.unreadReach()
                .filter(u -> u.limits().contains(first))
                .map(this::readFurther)
                .orElseGet(() -> cantTell(first));
          }
          case NEEDS -> "needs " + needs(end.needs()) + ".";
          case CLEAR -> clear(end);
        }
        + end.hungMm(card).stream()
            .mapToObj(mm -> " It hung free at " + fromZero(mm) + ": no lower? Shorten the strap.")
            .findFirst()
            .orElse("");
  }

  /** One sentence on the rules of an end that one height further out reads. */
  public String unreadReach(UnreadReach reach) {
    return where(reach.end()) + readFurther(reach);
  }

  private String readFurther(UnreadReach reach) {
    return "read " + reach.limits().size() + " limits further out, " + outTo(reach) + ".";
  }

  private static String where(End end) {
    return Capital.of(end.words()) + ": ";
  }

  private static Limit first(EndFindings end, Outcome outcome) {
    return end.limits().stream().filter(l -> l.outcome() == outcome).findFirst().orElseThrow();
  }

  /** One sentence on a limit of an end that is short, or cannot be told. */
  public String finding(EndFindings end, Limit limit) {
    return where(end.end())
        + (limit.outcome() == Outcome.SHORT ? shortfall(end, limit) : cantTell(limit));
  }

  /** The same where its name stands beside it; how much room a clear one has. */
  public String told(EndFindings end, Limit limit) {
    return switch (limit.outcome()) {
      case SHORT -> Capital.of(shortBy(end, limit));
      case CANT_TELL -> Capital.of(undecided(limit));
      case NEEDS ->
          limit.needs().isEmpty()
              ? "How much room there is waits for where the stop lets the wheel go."
              : "Needs " + needs(limit.needs()) + ".";
      case CLEAR -> limit.roomMm() == null ? "" : room(end, limit);
    };
  }

  private String room(EndFindings end, Limit limit) {
    String stop = (end.end() == End.DROOP ? "strap" : "bump stop") + " lets the wheel go.";
    String room = lengths.spare(limit.roomMm().value());
    return room.equals(lengths.text(0))
        ? "Kept as far as the " + stop
        : (limit.found() ? "" : "At least ") + room + " beyond where the " + stop;
  }

  private String shortfall(EndFindings end, Limit worst) {
    return name(worst) + " is " + shortBy(end, worst);
  }

  private String shortBy(EndFindings end, Limit worst) {
    if (worst.at() instanceof EndLimit.BrokenThroughout) {
      return past(worst.point()) + " at every height read; no stop fixes it.";
    }
    String stop = end.end() == End.DROOP ? "the strap stops the wheel" : "the stop is solid";
    String stretch =
        end.heldBack().filter(h -> h.mm().value() > 0).isEmpty()
            ? ""
            : end.end() == End.DROOP ? ", its stretch counted" : ", impact counted";
    // Planned from the reading that keeps the rule: where between the two it is met nobody has
    // read.
    String most = worst.bracket().isPresent() ? "up to " : "";
    String unread =
        worst.bracket().isPresent() ? "; nothing read between its last two heights tells" : "";
    return "reached "
        + most
        + lengths.plusMinus(Math.abs(worst.roomMm().value()))
        + " "
        + lengths.unit().word()
        + " of wheel travel before "
        + stop
        + stretch
        + unread
        + ".";
  }

  private String cantTell(Limit first) {
    return name(first) + ": " + undecided(first);
  }

  private String undecided(Limit first) {
    String why =
        first.mayGoPastWhatWasRead()
            ? "the wheel may go past the last reading"
            : !first.bracket().isPresent()
                ? "too close to call"
                    + (first.roomMm() == null
                        ? ""
                        : " within ± "
                            + lengths.plusMinus(first.roomMm().U())
                            + " "
                            + lengths.unit().word())
                : first.needs().isEmpty()
                    ? "the reading nearest to the stop keeps its rule by less than its own ±"
                    : "nothing read between its last two heights tells";
    return why + ". " + settles(first);
  }

  /** What would settle a can't-tell, one sentence; one reading of something else before more. */
  public String settles(Limit limit) {
    boolean elsewhere =
        next().stream().anyMatch(n -> limit.equals(n.limit()) && n.need().noHigherThanMm() == null);
    if (!limit.needs().isEmpty() && !elsewhere) {
      return "Read " + need(limit.needs().get(0)) + ".";
    }
    return next().stream()
        .filter(n -> n.decides().contains(limit) && !limit.equals(n.limit()))
        .findFirst()
        .map(n -> "Read " + need(n.need().bare()) + ": once should settle it.")
        .orElseGet(() -> settle.of(limit));
  }

  /** All that there is to read or give at this corner, the one that settles most first. */
  public List<NextReading> next() {
    return NextReading.ranked(card, travel);
  }

  /** What no reading that is asked for will settle, and why: a sentence each. */
  public List<String> leftOpen() {
    List<String> left = new ArrayList<>();
    for (EndFindings end : List.of(travel.droop(), travel.bump())) {
      end.limits().stream()
          .filter(l -> l.outcome() == Outcome.CANT_TELL)
          .filter(l -> next().stream().noneMatch(n -> n.about(l)))
          .forEach(l -> left.add(finding(end, l)));
    }
    travel.midTravel().stream()
        .filter(m -> m.outcome() == Outcome.CANT_TELL && !Settles.byReading(m.settles()))
        .forEach(m -> left.add(Capital.of(midTravel(m))));
    return left;
  }

  /** The same of what is too close to call in mid-travel. */
  public String settles(MidTravel mid) {
    return settle.of(mid);
  }

  private String clear(EndFindings end) {
    if (end.marginMm().isEmpty()) {
      return "nothing limits it.";
    }
    String spare = lengths.spare(end.marginMm().get().value());
    if (end.rules().isEmpty()) {
      String least = end.marginAtLeast() ? "at least " : "";
      return "no limit was met as far as was read, " + least + spare + " to spare.";
    }
    Limit rules = end.rules().get();
    // One that was read less far may be nearer than what was found.
    return end.marginAtLeast() && rules.roomMm() != null
        ? name(rules)
            + " is the nearest limit found, "
            + lengths.spare(rules.roomMm().value())
            + " to spare; another was read no further than "
            + spare
            + "."
        : name(rules) + " is the nearest limit, " + spare + " to spare.";
  }

  /** What an end's margin is called; what nobody has read so far is no margin, and has no minus. */
  public static String marginName(EndFindings end) {
    return end.unread()
        ? "not read, the last"
        : end.marginAtLeast() ? "margin, at least" : "margin";
  }

  public FigureText margin(EndFindings end, Figure marginMm) {
    return end.unread() ? lengths.figure(marginMm.times(-1)) : lengths.signedFigure(marginMm);
  }

  /** An end's room as text: with its sign, but where the words beside it say which way it is. */
  public FigureText roomSize(EndFindings end, Figure roomMm) {
    return end.outcome() == Outcome.SHORT || end.outcome() == Outcome.NEEDS && end.unread()
        ? lengths.figure(roomMm.value() < 0 ? roomMm.times(-1) : roomMm)
        : lengths.signedFigure(roomMm);
  }

  /** What that figure is: "past it", "to spare". */
  public String roomWord(EndFindings end) {
    return switch (end.outcome()) {
      case SHORT ->
          end.roomMm().isEmpty()
              ? "at every height read"
              : first(end, Outcome.SHORT).bracket().isPresent() ? "past it at most" : "past it";
      case CANT_TELL -> State.CANT_TELL.word();
      default -> end.unread() ? "not read" : end.marginAtLeast() ? "to spare at least" : "to spare";
    };
  }

  /** What an end needs, for a key: "needs 3 gaps". */
  public String needsBrief(List<Need> needs) {
    if (needs.size() == 1 && needs.get(0).because().isEmpty()) {
      return "needs " + need(needs.get(0));
    }
    String what =
        needs.stream().anyMatch(n -> n.toRead() == null)
            ? "figure"
            : needs.stream().allMatch(n -> n.toRead().quantity() == Quantity.WATCH_POINT)
                ? "gap"
                : "reading";
    return "needs " + Counted.of(needs.size(), what);
  }

  /** Several needs in one line: gaps that nobody has looked at are counted, not listed. */
  public String needs(List<Need> needs) {
    List<Need> unlooked =
        needs.stream()
            .filter(n -> n.toRead() != null && n.toRead().quantity() == Quantity.WATCH_POINT)
            .filter(n -> n.noHigherThanMm() == null)
            .toList();
    List<String> words =
        new ArrayList<>(needs.stream().filter(n -> !unlooked.contains(n)).map(this::need).toList());
    if (unlooked.size() > 2) {
      words.add(unlooked.size() + " gaps to measure");
    } else {
      unlooked.stream().map(this::need).distinct().forEach(words::add);
    }
    if (words.size() <= 2) {
      return String.join(" and ", words);
    }
    return words.get(0) + ", " + words.get(1) + " and " + (words.size() - 2) + " more";
  }

  public String need(Need need) {
    if (need.dimension() != null) {
      return given(need);
    }
    if (need.allowance() != null) {
      return "your number for " + need.allowance().words();
    }
    ToRead read = need.toRead();
    String because = need.because().isEmpty() ? "" : " (" + need.because().get(0) + ")";
    if (read.quantity() == null) {
      String again = need.because().isEmpty() ? "" : " again";
      String height = "'" + read.name().words() + "'" + LimitNames.pairing(read.pairing());
      return "the height " + height + again + because;
    }
    String what =
        read.quantity() == Quantity.WATCH_POINT
            ? card.watchPoint(read.point())
                    .map(p -> names.of(p, read.steering()))
                    .orElse(read.point())
                + LimitNames.pairing(read.pairing())
            : read.quantity().words() + LimitNames.pairing(read.pairing());
    if (need.noHigherThanMm() != null) {
      return what + " at " + fromZero(need.noHigherThanMm()) + ", or beyond" + because;
    }
    return switch (read.quantity()) {
      case STRAP_LENGTH, SHOCK_LENGTH, STOP_GAP ->
          what
              + " at "
              + (read.name() == HeightName.IN_BETWEEN
                  ? "another height"
                  : "'" + read.name().words() + "'")
              + because;
      default -> what + because;
    };
  }

  /** "at +6 7/8 in from ride, or higher". */
  public String outTo(UnreadReach reach) {
    String further = reach.end() == End.DROOP ? ", or lower" : ", or higher";
    return "at " + fromZero(reach.outToMm()) + further;
  }

  /** "+6 7/8 in from ride". */
  public String fromZero(double positionMm) {
    return position(positionMm) + " " + zero.words();
  }

  /** A length to give; the new part's where it was given of one that was changed since. */
  private static String given(Need need) {
    String words = need.dimension().words();
    if (need.because().isEmpty()) {
      return words;
    }
    return (words.startsWith("new ") ? "the " : "the new ")
        + words
        + " ("
        + need.because().get(0)
        + ")";
  }

  /**
   * "Limit strap 5/8 in shorter, to 19 3/8 in, stops the wheel 1 in sooner and cures it, ±
   * included." Where a limit stays too close to call because of what was read of it, it is named.
   */
  public String cure(EndFindings end) {
    if (end.cure().isEmpty()) {
      return "";
    }
    Cure cure = end.cure().get();
    String thing =
        card.adjuster(cure.adjuster()).map(a -> a.adjuster().name()).orElse(cure.adjuster());
    String sense = end.end() == End.DROOP ? " shorter" : " thicker";
    String than = cure.from() == null ? "it is now" : cure.from().inWords();
    String to = cure.to() == null ? " than " + than : ", to " + cure.to().inWords();
    return Capital.of(thing)
        + " "
        + lengths.text(cure.setMm())
        + sense
        + to
        + ", stops the wheel "
        + lengths.text(Math.abs(cure.atWheelMm()))
        + " sooner and "
        + (cure.leaves() == null
            ? (end.outcome() == Outcome.SHORT ? "fixes it" : "makes it clear") + ", ± included."
            : "takes away the shortfall and its ±; "
                + name(cure.leaves())
                + " stays too close to call until it is read again.");
  }

  /** Of the stop at an end. */
  public String cureVerb(EndFindings end) {
    return end.end() == End.DROOP ? "Shorten strap" : "Thicken spacer";
  }

  /** "Shorten strap 5/8 in"; empty without a cure. */
  public String cureKey(EndFindings end) {
    return end.cure()
        .map(c -> cureVerb(end) + " " + lengths.text(c.setMm()).replace(' ', '\u00a0'))
        .orElse("");
  }

  /** "to 19 3/8 in"; empty where the present setting is not known. */
  public String cureTo(EndFindings end) {
    return end.cure()
        .filter(c -> c.to() != null)
        .map(c -> "to " + c.to().inWords().replace(' ', '\u00a0'))
        .orElse("");
  }

  /**
   * "to 19 3/8 in, 1 3/16 in at the wheel": a strap's inch is not the wheel's. Where a reading may
   * show as well that nothing is to be done: "to be sure: to 19 3/8 in".
   */
  public String cureDoes(EndFindings end) {
    String to = cureTo(end);
    return end.cure()
        .map(c -> lengths.text(Math.abs(c.atWheelMm())).replace(' ', '\u00a0') + " at the wheel")
        .map(wheel -> to.isEmpty() ? wheel : to + ", " + wheel)
        .map(does -> end.outcome() == Outcome.CANT_TELL ? "to be sure: " + does : does)
        .orElse("");
  }

  /** Where the two ways of finding the solid stop disagree; empty where they do not. */
  public String stopsDiffer(EndFindings end) {
    return end.stop().filter(s -> s.otherMm() != null).map(this::stopsDiffer).orElse("");
  }

  private String stopsDiffer(StopFound stop) {
    Figure read = stop.computed() ? stop.otherMm() : stop.positionMm();
    Figure computed = stop.computed() ? stop.positionMm() : stop.otherMm();
    return "Full bump was read at "
        + position(read.value())
        + ", but touch and crush put the solid stop at "
        + position(computed.value())
        + ", "
        + zero.words()
        + ": further apart than their ± of "
        + lengths.plusMinus(read.minus(computed).U())
        + " "
        + lengths.unit().word()
        + ". The margin counts to the further one, the travel as set to the nearer. Read full bump"
        + " again with the stop really solid, or touch and the stop's gap; if they stand, correct"
        + " the crush that is given.";
  }

  /** "−4 1/8 in", from the page's zero. */
  public String position(double positionMm) {
    return lengths.signedText(zero.from(positionMm));
  }

  /** A bracket's two ends, and which of them is planned from; empty for a limit on the curve. */
  public String between(Limit limit) {
    return limit
        .bracket()
        .map(
            b ->
                ", between "
                    + position(b.positionMm().value())
                    + " and "
                    + position(b.brokenMm().value())
                    + ", planned from")
        .orElse("");
  }

  public String midTravel(MidTravel mid) {
    boolean isShort = mid.outcome() == Outcome.SHORT;
    return name(mid)
        + (" is " + (isShort ? past(mid.point()) : "too close to call") + " in mid-travel, ")
        + place(mid.shortfall())
        + " "
        + lengths.unit().word()
        + " "
        + zero.words()
        + (isShort ? "; no stop fixes it." : ". " + settles(mid));
  }

  /** One reading is one place. */
  private String place(Shortfall stretch) {
    String from = lengths.signed(zero.from(stretch.fromMm()));
    String to = lengths.signed(zero.from(stretch.toMm()));
    return (from.equals(to) ? "at " + from : from + " to " + to).replace('-', '−');
  }

  /** The full lock at which a limit acts; null where it is none or does not matter. */
  public static Steer steer(Limit limit) {
    return limit.steering() == Steering.FULL_LEFT
        ? Steer.LEFT
        : limit.steering() == Steering.FULL_RIGHT ? Steer.RIGHT : null;
  }
}
