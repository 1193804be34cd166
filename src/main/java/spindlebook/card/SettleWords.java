package spindlebook.card;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import spindlebook.definition.Measure;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Settles;
import spindlebook.uncertainty.Source;
import spindlebook.uncertainty.SourceKind;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/**
 * What would settle a can't-tell, one sentence: how often to read it, with which graduation, or
 * that repeating will not.
 */
public record SettleWords(Card card) {
  private static final int FINEST_ON_A_TAPE = 64;
  private static final double NOISE = 1e-9;

  /** Nobody reads one gap more often; common practice, no source. */
  private static final int MOST_TIMES = 3;

  String of(Limit limit) {
    Figure of = limit.roomMm() == null ? limit.positionMm() : limit.roomMm();
    boolean between = limit.bracket().isPresent() || mostlyBetweenReadings(limit.roomMm());
    return between && !Settles.byReading(limit.settles())
        ? "Reading it again will not settle it; reading it at one more height near there may."
        : words(limit.settles(), of, limit.readings(), "Move the stop.");
  }

  String of(MidTravel mid) {
    return words(
        mid.settles(), mid.shortfall().worst(), mid.shortfall().readings(), "Make more room.");
  }

  private String words(Settles settles, Figure of, List<String> readings, String otherwise) {
    return words(settles, steps -> graduation(of, readings, steps), otherwise);
  }

  /** Where nothing is known of the tool it was read with. */
  public static String words(Settles settles) {
    return words(settles, steps -> "", "Set it further inside.");
  }

  /**
   * @param otherwise what settles it where no reading will that somebody takes
   */
  private static String words(
      Settles settles, DoubleFunction<String> graduation, String otherwise) {
    String not = "Repeating will not settle it. " + otherwise;
    if (settles instanceof Settles.Repeats repeats) {
      return repeats.n() > MOST_TIMES ? not : "Read it " + repeats.n() + " times in all.";
    }
    if (settles instanceof Settles.FinerTool finer) {
      return finer.steps() == 0
          ? not
          : "Read it with a finer tool" + graduation.apply(finer.steps()) + ".";
    }
    if (settles instanceof Settles.RepeatsOrFinerTool either) {
      String tool = "with a finer tool" + graduation.apply(either.steps()) + ".";
      boolean often = either.n() > MOST_TIMES;
      return either.steps() == 0
          ? (often ? not : "Read it " + either.n() + " times in all.")
          : often
              ? "Repeating will not settle it. Read it " + tool
              : "Read it " + either.n() + " times in all, or " + tool;
    }
    if (settles instanceof Settles.RepeatsWithFinerTool both) {
      String tool = graduation.apply(both.steps());
      return both.n() > MOST_TIMES || both.steps() == 0
          ? not
          : "Read it " + both.n() + " times in all, with a finer tool" + tool + ".";
    }
    return "Reading it again will not settle it: an error that every reading shares, of the tape or"
        + " of a mark read once, is larger than the difference.";
  }

  /** Of the steps that weigh most in it. */
  private String graduation(Figure of, List<String> readings, double share) {
    Optional<Source> coarsest =
        of == null
            ? Optional.empty()
            : of.parts().entrySet().stream()
                .filter(part -> part.getKey().kind() == SourceKind.RESOLUTION)
                .max(Comparator.comparingDouble(part -> Math.abs(part.getValue())))
                .map(Map.Entry::getKey);
    return coarsest
        .flatMap(source -> graduation(source, readings, share))
        .map(tool -> ": " + tool)
        .orElse("");
  }

  private Optional<String> graduation(Source source, List<String> readings, double share) {
    Optional<String> ofReading =
        readings.stream()
            .flatMap(key -> card.reading(key).stream())
            .filter(r -> r.value() != null && r.value().parts().containsKey(source))
            .findFirst()
            .map(r -> to(angle(r), step(r.value(), source), share));
    return ofReading.or(
        () ->
            card.heights().stream()
                .map(SeenHeight::positionMm)
                .flatMap(Stream::ofNullable)
                .filter(mm -> mm.parts().containsKey(source))
                .findFirst()
                .map(mm -> to(false, step(mm, source), share) + ", the heights too"));
  }

  private static boolean angle(SeenReading reading) {
    return reading.point() != null && reading.point().place().measure() == Measure.ANGLE;
  }

  /** What its steps are, from g/√12. */
  private static double step(Figure figure, Source source) {
    return Math.abs(figure.parts().get(source)) * Math.sqrt(12);
  }

  private static String to(boolean angle, double step, double share) {
    return "one that reads to "
        + (angle ? degrees(step * share) : length(step, share))
        + " or finer, not "
        + (angle ? degrees(step) : length(step, 1));
  }

  /** In the unit that the tool itself is divided in. */
  private static String length(double stepMm, double share) {
    double inches = stepMm / LengthUnit.INCH.mm();
    if (!onTape(inches)) {
      return oneDigit(stepMm * share) + " mm";
    }
    return (onTape(inches * share)
            ? TapeFormat.inches(stepMm * share, FINEST_ON_A_TAPE)
            : oneDigit(inches * share))
        + " in";
  }

  private static boolean onTape(double inches) {
    double lines = inches * FINEST_ON_A_TAPE;
    return Math.rint(lines) >= 1 && Math.abs(lines - Math.rint(lines)) < NOISE * 1000;
  }

  private static String degrees(double rad) {
    return oneDigit(Math.toDegrees(rad)) + "°";
  }

  /** Rounded to the finer side. */
  private static String oneDigit(double step) {
    return BigDecimal.valueOf(step * (1 + NOISE))
        .round(new MathContext(1, RoundingMode.DOWN))
        .stripTrailingZeros()
        .toPlainString();
  }

  /** Whether most of the doubt is about the curve where nobody has read. */
  private static boolean mostlyBetweenReadings(Figure figure) {
    if (figure == null) {
      return false;
    }
    double between = figure.u(kind -> kind == SourceKind.INTERPOLATION);
    return between * between > figure.u() * figure.u() / 2;
  }
}
