package spindlebook.suspension;

import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import spindlebook.card.RideText;
import spindlebook.definition.BumpStop;
import spindlebook.definition.CornerWeight;
import spindlebook.definition.Spring;
import spindlebook.fold.Card;
import spindlebook.fold.SeenSprings.Said;
import spindlebook.page.Asked;
import spindlebook.ride.CornerRide;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TapeText;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/** What is asked of a corner's spring, bump stops and weight. Null while something is wrong. */
record SpringForms(Asked a, Card card) {
  private static final String FORCE_UNIT = "\\s*(?:lbs?|lbf|N|kg)?";
  private static final Pattern POINT =
      Pattern.compile("(.*\\S)\\s+(\\d+(?:[.,]\\d+)*" + FORCE_UNIT + ")");

  /** Commas part points, unless semicolons do; but not the comma of 1,200 at a point's end. */
  private static final Pattern BETWEEN_POINTS =
      Pattern.compile(",(?!\\d{3}" + FORCE_UNIT + "\\s*(?:,|$))");

  private RideText text() {
    return new RideText(card.details().unit(), "");
  }

  // --- the spring

  Spring spring() {
    Optional<Spring> was = card.springs().spring().map(Said::what);
    TypedAmount rate =
        rate("rate", "Spring rate", was.map(Spring::rate))
            .hint("As printed on it. With its ± where you know it: 250 ± 10.")
            .needed("Type the spring's rate, such as 250.");
    TypedLength preload =
        a.signed("preload", "Preload")
            .hint("How far it is pressed together with the shock open. 0 just touches.")
            .was(was.map(Spring::preload).orElse(null))
            .read();
    return a.more(
        "Two springs, coil bind, tyre, where it should sit", () -> spring(rate, preload, was));
  }

  private Spring spring(TypedAmount rate, TypedLength preload, Optional<Spring> was) {
    TypedAmount tender =
        rate("tender", "Upper spring's rate, of two in series", was.map(Spring::tender)).read();
    TypedLength crossover =
        length(
            "crossover",
            "Upper spring pressed together at its crossover stop",
            was.map(Spring::crossover));
    TypedLength loose =
        length(
            "loose-at",
            "Instead of preload: shock length where it is just loose",
            was.map(Spring::looseAt));
    TypedLength free = length("free", "Free length, for coil bind", was.map(Spring::free));
    TypedLength solid = length("solid", "Solid length, its turns touching", was.map(Spring::solid));
    TypedAmount tyre = rate("tyre", "Tyre's rate, if you know", was.map(Spring::tyre)).read();
    TypedLength sit = sitAt(was.map(Spring::sitAt).orElse(null));
    Double hz =
        a.number("hz", "Bounces wanted a second", 0.1, 20, "Type a number such as 1.2.")
            .was(was.map(Spring::hz).orElse(null))
            .read();
    if ((tender == null) != (crossover == null) && a.ok()) {
      a.wrong("crossover", "Two springs need both: the upper one's rate and its crossover.");
    }
    if (loose != null && preload != null) {
      a.wrong("loose-at", "Type the preload or this, not both.");
    }
    if (free != null && solid != null && free.mm() <= solid.mm()) {
      a.wrong("solid", "Type a solid length that is shorter than the free one.");
    }
    return a.ok()
        ? new Spring(rate, tender, crossover, loose, preload, free, solid, tyre, sit, hz)
        : null;
  }

  /** By the share of the travel that is to be droop, where both stops are known. */
  private TypedLength sitAt(TypedLength was) {
    CornerRide ride = CornerRide.of(card);
    if (ride.between(0).isEmpty()) {
      return was;
    }
    double low = ride.between(0).get();
    double travel = ride.between(1).orElseThrow() - low;
    Double share =
        a.percent("droop", "Droop wanted, of the travel", 1, 99)
            .was(was == null ? null : Math.rint(100 * (was.mm() - low) / travel))
            .read();
    return share == null ? null : workedOut(low + travel * share / 100);
  }

  private TypedLength workedOut(double mm) {
    return new TypedLength("", mm, a.unit(), "worked-out");
  }

  // --- the weight

  CornerWeight weight() {
    Optional<CornerWeight> was = card.springs().weight().map(Said::what);
    CornerWeight.By by =
        a.one("by", "How it is known", CornerWeight.By.class, CornerWeight.By::words)
            .first(was.map(CornerWeight::by).orElse(CornerWeight.By.SCALES))
            .read();
    boolean lever = by == CornerWeight.By.LEVER;
    TypedAmount weight =
        weight("weight", "Weight on the ground at this corner", was.map(CornerWeight::weight))
            .hint("As it drives: driver, fuel. With its ± if it is a guess: 1100 ± 50.")
            .neededIf(a.sent() && !lever, "Type the corner's weight, such as 1100.");
    TypedAmount unsprung =
        weight("unsprung", "Of it the spring does not carry", was.map(CornerWeight::unsprung))
            .hint("Wheel, tyre, hub, brake, half of the arms and the shock.")
            .needed("Type what wheel, hub and half of the arms weigh, such as 150 ± 20.");
    return a.more(
        "By a bathroom scale and a plank",
        () -> {
          a.said(
              "One end of the plank on an edge, the other on the scale, the tyre on it between.");
          TypedAmount read = weight("read", "The scale shows", was.map(CornerWeight::read)).read();
          TypedAmount bare =
              weight("bare", "And under the plank alone", was.map(CornerWeight::bare)).read();
          TypedLength toScale =
              above("to-scale", "From the edge to the scale", was.map(CornerWeight::toScale));
          TypedLength toWheel =
              above(
                  "to-wheel", "From the edge to the tyre's middle", was.map(CornerWeight::toWheel));
          if (lever && (read == null || toScale == null || toWheel == null)) {
            a.wrong("read", "Type what the scale shows and both distances from the edge.");
          } else if (bare != null && read != null && bare.si(false) >= read.si(false)) {
            a.wrong("bare", "The plank alone weighs less than with the wheel on it.");
          }
          TypedAmount typed = lever ? null : weight;
          return a.ok()
              ? new CornerWeight(by, typed, read, bare, toScale, toWheel, unsprung, null)
              : null;
        });
  }

  // --- a bump stop

  /**
   * @param named its short name, or {@code new}
   */
  BumpStop stop(String named) {
    Optional<BumpStop> was =
        card.springs().stops().stream()
            .map(Said::what)
            .filter(s -> s.stop().equals(named))
            .findFirst();
    if (was.isEmpty() && !named.equals("new")) {
      throw new NotFoundResponse();
    }
    String stop = was.map(BumpStop::stop).orElse(a.key().key());
    String name =
        a.line("name", "What you call it", 40)
            .hint("Such as 2 x 4 in air, 60 psi.")
            .was(was.map(BumpStop::name).orElse(null))
            .read();
    BumpStop.Kind kind =
        a.one("kind", "Filled with", BumpStop.Kind.class, BumpStop.Kind::words)
            .first(was.map(BumpStop::kind).orElse(BumpStop.Kind.AIR))
            .read();
    List<BumpStop.Point> chart =
        a.typed("chart", "Its chart: pressed in so far, it pushes so hard", this::chart)
            .hint("From the maker: 0 50, 1 200, 2 700, 3 2400.")
            .starts(was.map(SpringForms::inWords).orElse(null))
            .needed("Type points from the chart, such as 0 50, 1 200, 2 700.");
    boolean fitted =
        a.<Boolean>one("fitted", "It is")
            .option("fitted", true, "fitted", "")
            .option("compare", false, "only to compare", "")
            .firstKey(was.map(BumpStop::fitted).orElse(true) ? "fitted" : "compare")
            .read();
    TypedLength drop =
        a.length("drop", "Drop, tyre above the ground")
            .hint("How hard a landing it is to take. Empty: none is worked out.")
            .was(was.map(BumpStop::drop).orElse(null))
            .read();
    Double damped =
        a.percent("damped", "Of it the shock takes", 0, 99)
            .hint("Your guess; 0 is cautious.")
            .was(was.map(BumpStop::damped).orElse(null))
            .read();
    return a.more(
        "Longer or shorter, off the wheel, how sure the chart is",
        () -> {
          TypedLength longer =
              a.signed("longer", "Touched earlier than stop touch was read, at the wheel")
                  .hint("A longer stop or spacer. − later.")
                  .read();
          Double ratio =
              a.number("ratio", "Stop for wheel", 0.01, 10, "Type a number such as 0.8.")
                  .hint("How much of the stop an inch of wheel takes; 1 at the wheel.")
                  .was(was.map(BumpStop::ratio).orElse(null))
                  .read();
          Double within =
              a.percent("within", "The chart may be off by", 0, 100)
                  .was(was.map(BumpStop::chartWithin).orElse(null))
                  .read();
          Optional<Figure> read = CornerRide.of(card).touchRead();
          if (longer != null && read.isEmpty()) {
            a.wrong("longer", "Read the height at stop touch first: it is counted from there.");
          }
          TypedLength touch =
              longer == null || read.isEmpty()
                  ? was.map(BumpStop::touch).orElse(null)
                  : workedOut(read.get().value() - longer.mm());
          return a.ok()
              ? new BumpStop(stop, name, kind, chart, touch, ratio, within, fitted, drop, damped)
              : null;
        });
  }

  private static String inWords(BumpStop stop) {
    return stop.chart().stream()
        .map(p -> p.crush().words() + " " + p.force().typed())
        .collect(Collectors.joining("; "));
  }

  /** Null, and said why, where a point is none. */
  private List<BumpStop.Point> chart(String typed) {
    List<BumpStop.Point> points = new ArrayList<>();
    double next = 0;
    for (String each : typed.contains(";") ? typed.split(";") : BETWEEN_POINTS.split(typed)) {
      Matcher point = POINT.matcher(each.strip());
      boolean one = point.matches();
      TypedLength crush = one ? TapeText.plain(point.group(1), a.unit()).orElse(null) : null;
      TypedAmount force =
          one ? TypedAmount.typed(point.group(2), text().force()).plain().orElse(null) : null;
      if (crush == null || force == null || crush.mm() < next || (next == 0 && crush.mm() > 0)) {
        a.wrong(
            "chart",
            "'"
                + each.strip()
                + "' is no next point: begin at 0, then further in each time, such as 1 200.");
        return null;
      }
      next = Math.nextUp(crush.mm());
      points.add(new BumpStop.Point(crush, force));
    }
    if (points.size() < 2) {
      a.wrong("chart", "A chart has two points at least, such as 0 50, 2 700.");
      return null;
    }
    return points;
  }

  // --- lengths, amounts and numbers

  private TypedLength length(String name, String label, Optional<TypedLength> was) {
    return a.length(name, label).was(was.orElse(null)).read();
  }

  private TypedLength above(String name, String label, Optional<TypedLength> was) {
    return a.above(name, label).was(was.orElse(null)).read();
  }

  private Asked.Box<TypedAmount> rate(String name, String label, Optional<TypedAmount> was) {
    return a.amount(name, label, text().rate()).was(was.orElse(null));
  }

  private Asked.Box<TypedAmount> weight(String name, String label, Optional<TypedAmount> was) {
    return a.amount(name, label, text().weight()).was(was.orElse(null));
  }
}
