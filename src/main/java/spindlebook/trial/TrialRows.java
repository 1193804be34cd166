package spindlebook.trial;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.Card;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.travel.StopMoved;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.trial.TrialView.Row;
import spindlebook.uncertainty.Figure;
import spindlebook.web.Lengths;

/** A corner's figures and findings, two states of it side by side. */
final class TrialRows {
  private static final List<String> WHAT =
      List.of(
          "Margin in droop",
          "Droop",
          "Margin in bump",
          "Bump",
          "Travel as set",
          "Travel as it could be",
          "In mid-travel");

  private TrialRows() {}

  /**
   * @param foretold where its stop would be; its margin stands where none is read yet
   */
  static List<Row> of(Card today, Card then, List<StopMoved> foretold) {
    List<String> now = states(today, List.of());
    List<String> later = states(then, foretold);
    return IntStream.range(0, WHAT.size())
        .mapToObj(i -> new Row(WHAT.get(i), now.get(i), later.get(i)))
        .toList();
  }

  private static List<String> states(Card card, List<StopMoved> foretold) {
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    Lengths lengths = words.lengths();
    return List.of(
        margin(travel.droop(), words, foretold),
        decided(travel.droop(), words),
        margin(travel.bump(), words, foretold),
        decided(travel.bump(), words),
        total(travel.asSet(), lengths),
        total(travel.asItCouldBe(), lengths),
        travel.midTravel().isEmpty()
            ? "nothing short"
            : String.join(" ", travel.midTravel().stream().map(words::midTravel).toList()));
  }

  private static String decided(EndFindings end, TravelWords words) {
    return Shown.state(end.outcome()).word() + ". " + words.finding(end);
  }

  private static String margin(EndFindings end, TravelWords words, List<StopMoved> foretold) {
    if (end.marginMm().isPresent()) {
      return TravelWords.marginName(end).replaceFirst("^margin(, )?", "")
          + " "
          + words.margin(end, end.marginMm().get()).words();
    }
    return foretold.stream()
        .filter(moved -> moved.end() == end.end())
        .flatMap(moved -> moved.marginMm().stream())
        .min(Comparator.comparingDouble(Figure::value))
        .map(mm -> signed(mm, words.lengths()) + ", foretold")
        .orElse("not known");
  }

  private static String total(Total total, Lengths lengths) {
    return (total.atLeast() && total.mm().isPresent() ? "at least " : "")
        + total.mm().map(f -> unsigned(f, lengths)).orElse("not known");
  }

  private static String unsigned(Figure mm, Lengths lengths) {
    return within(lengths.text(mm.value()), mm, lengths);
  }

  static String signed(Figure mm, Lengths lengths) {
    return within(lengths.signedText(mm.value()), mm, lengths);
  }

  private static String within(String value, Figure mm, Lengths lengths) {
    return value + " ± " + lengths.plusMinus(mm.U());
  }
}
