package spindlebook.suspension;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
import spindlebook.travel.End;
import spindlebook.uncertainty.Figure;
import spindlebook.units.AmountUnit;
import spindlebook.units.LengthUnit;
import spindlebook.units.NumberText;
import spindlebook.units.TapeText;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/** What is asked of a corner's spring, bump stops and weight. Null while something is wrong. */
final class SpringForms {
  private static final Pattern POINT =
      Pattern.compile("(.*\\S)\\s+(\\d+(?:\\.\\d+)?\\s*(?:lbs?|lbf|N|kg)?)");

  private final Asked a;
  private final Card card;
  private final RideText text;

  SpringForms(Asked a, Card card) {
    this.a = a;
    this.card = card;
    this.text = new RideText(card.details().unit(), "");
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
        "Two springs, coil bind, tyre, where it should sit",
        () -> {
          TypedAmount tender =
              rate("tender", "Upper spring's rate, of two in series", was.map(Spring::tender))
                  .read();
          TypedLength crossover =
              a.length("crossover", "Upper spring pressed together at its crossover stop")
                  .was(was.map(Spring::crossover).orElse(null))
                  .read();
          TypedLength loose =
              a.length("loose-at", "Instead of preload: shock length where it is just loose")
                  .was(was.map(Spring::looseAt).orElse(null))
                  .read();
          TypedLength free =
              a.length("free", "Free length, for coil bind")
                  .was(was.map(Spring::free).orElse(null))
                  .read();
          TypedLength solid =
              a.length("solid", "Solid length, its turns touching")
                  .was(was.map(Spring::solid).orElse(null))
                  .read();
          TypedAmount tyre = rate("tyre", "Tyre's rate, if you know", was.map(Spring::tyre)).read();
          TypedLength sit = sitAt(was);
          Double hz =
              number("hz", "Bounces wanted a second", 0.1, 20, "Type a number such as 1.2.")
                  .starts(was.map(Spring::hz).map(String::valueOf).orElse(null))
                  .read();
          if ((tender == null) != (crossover == null) && a.ok()) {
            a.wrong("crossover", "Two springs need both: the upper one's rate and its crossover.");
          }
          if (loose != null && preload != null) {
            a.wrong("loose-at", "Type the preload or this, not both.");
          }
          if (free != null && solid != null && free.mm() <= solid.mm()) {
            a.wrong("solid", "The solid length is shorter than the free one.");
          }
          return a.ok()
              ? new Spring(rate, tender, crossover, loose, preload, free, solid, tyre, sit, hz)
              : null;
        });
  }

  /** By the share of the travel that is to be droop, where both stops are known. */
  private TypedLength sitAt(Optional<Spring> was) {
    CornerRide ride = CornerRide.of(card);
    Optional<Double> low = ride.stop(End.DROOP).map(Figure::value);
    Optional<Double> high = ride.stop(End.BUMP).map(Figure::value);
    if (low.isEmpty() || high.isEmpty()) {
      return was.map(Spring::sitAt).orElse(null);
    }
    double travel = high.get() - low.get();
    String start =
        was.map(Spring::sitAt)
            .map(at -> String.format(Locale.ROOT, "%.0f", 100 * (at.mm() - low.get()) / travel))
            .orElse(null);
    Double share =
        number("droop", "Droop wanted, per cent of the travel", 1, 99, "Type 1 to 99 per cent.")
            .unit("%")
            .starts(start)
            .read();
    return share == null
        ? null
        : new TypedLength("", low.get() + travel * share / 100, a.unit(), "worked-out");
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
              a.above("to-scale", "From the edge to the scale")
                  .was(was.map(CornerWeight::toScale).orElse(null))
                  .read();
          TypedLength toWheel =
              a.above("to-wheel", "From the edge to the tyre's middle")
                  .was(was.map(CornerWeight::toWheel).orElse(null))
                  .read();
          if (lever && (read == null || toScale == null || toWheel == null)) {
            a.wrong("read", "Type what the scale shows and both distances from the edge.");
          }
          return a.ok()
              ? new CornerWeight(
                  by, lever ? null : weight, read, bare, toScale, toWheel, unsprung, null)
              : null;
        });
  }

  // --- a bump stop

  /**
   * @param stop its short name
   */
  BumpStop stop(String stop, Optional<BumpStop> was) {
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
        number("damped", "Of it the shock takes", 0, 99, "Type 0 to 99 per cent.")
            .unit("%")
            .hint("Your guess; 0 is cautious.")
            .starts(was.map(s -> plain(s.damped())).orElse(null))
            .read();
    return a.more(
        "Longer or shorter, off the wheel, how sure the chart is",
        () -> {
          TypedLength longer =
              a.signed("longer", "Touched earlier than stop touch was read, at the wheel")
                  .hint("A longer stop or spacer. − later.")
                  .read();
          Double ratio =
              number("ratio", "Stop for wheel", 0.01, 10, "Type a number such as 0.8.")
                  .hint("How much of the stop an inch of wheel takes; 1 at the wheel.")
                  .starts(was.map(s -> plain(s.ratio())).orElse(null))
                  .read();
          Double within =
              number("within", "The chart may be off by", 0, 100, "Type 0 to 100 per cent.")
                  .unit("%")
                  .starts(was.map(s -> plain(s.chartWithin())).orElse(null))
                  .read();
          Optional<Double> read = CornerRide.of(card).touchReadMm();
          TypedLength touch =
              longer == null || read.isEmpty()
                  ? was.map(BumpStop::touch).orElse(null)
                  : new TypedLength("", read.get() - longer.mm(), a.unit(), "worked-out");
          if (longer != null && read.isEmpty()) {
            a.wrong("longer", "Read the height at stop touch first: it is counted from there.");
          }
          return a.ok()
              ? new BumpStop(stop, name, kind, chart, touch, ratio, within, fitted, drop, damped)
              : null;
        });
  }

  private static String inWords(BumpStop stop) {
    return stop.chart().stream()
        .map(p -> p.crush().words() + " " + p.force().typed())
        .collect(Collectors.joining(", "));
  }

  /** Null, and said why, where a point is none. */
  private List<BumpStop.Point> chart(String typed) {
    List<BumpStop.Point> points = new ArrayList<>();
    for (String each : typed.split("[,;]")) {
      Matcher point = POINT.matcher(each.strip());
      Optional<TypedLength> crush =
          point.matches() ? TapeText.plain(point.group(1), a.unit()) : Optional.empty();
      Optional<TypedAmount> force =
          point.matches() ? TypedAmount.read(point.group(2), pound()) : Optional.empty();
      boolean rises =
          crush.isPresent()
              && (points.isEmpty()
                  ? crush.get().mm() == 0
                  : crush.get().mm() > points.get(points.size() - 1).crush().mm());
      if (force.isEmpty() || !rises) {
        a.wrong(
            "chart",
            "'"
                + each.strip()
                + "' is no next point: begin at 0, then further in each time, such as 1 200.");
        return null;
      }
      points.add(new BumpStop.Point(crush.get(), force.get()));
    }
    if (points.size() < 2) {
      a.wrong("chart", "A chart has two points at least, such as 0 50, 2 700.");
      return null;
    }
    return points;
  }

  // --- amounts

  private AmountUnit pound() {
    return card.details().unit() == LengthUnit.INCH ? AmountUnit.POUND : AmountUnit.NEWTON;
  }

  private Asked.Box<TypedAmount> rate(String name, String label, Optional<TypedAmount> was) {
    return amount(a, name, label, text.rate(), was);
  }

  private Asked.Box<TypedAmount> weight(String name, String label, Optional<TypedAmount> was) {
    return amount(a, name, label, text.weight(), was);
  }

  /** In {@code bare} where no unit is typed. */
  static Asked.Box<TypedAmount> amount(
      Asked a, String name, String label, AmountUnit bare, Optional<TypedAmount> was) {
    return a.typed(name, label, typed -> amount(a, name, bare, typed))
        .unit(bare.word())
        .starts(was.map(TypedAmount::typed).orElse(null));
  }

  private static TypedAmount amount(Asked a, String name, AmountUnit bare, String typed) {
    Optional<TypedAmount> read = TypedAmount.read(typed, bare);
    try {
      if (read.isPresent() && read.get().si(bare.rate()) >= 0) {
        return read.get();
      }
    } catch (IllegalArgumentException other) {
      // Of another kind, or below nothing: said below.
    }
    a.wrong(
        name,
        "'"
            + typed
            + "' is not read here: type a number"
            + (bare.rate() ? ", in lb/in or N/mm." : ", in lb, kg or N."));
    return null;
  }

  private Asked.Box<Double> number(
      String name, String label, double least, double most, String sentence) {
    return number(a, name, label, least, most, sentence);
  }

  static Asked.Box<Double> number(
      Asked a, String name, String label, double least, double most, String sentence) {
    return a.typed(
        name,
        label,
        typed -> {
          double number = NumberText.read(typed.replace("%", "")).orElse(Double.NaN);
          if (number >= least && number <= most) {
            return number;
          }
          a.wrong(name, sentence);
          return null;
        });
  }

  static String plain(double number) {
    return number == Math.rint(number)
        ? Long.toString(Math.round(number))
        : Double.toString(number);
  }
}
