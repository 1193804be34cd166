package spindlebook.trial;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.corner.Card;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
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

  static List<Row> of(Card today, Card then) {
    List<String> now = states(today);
    List<String> later = states(then);
    return IntStream.range(0, WHAT.size())
        .mapToObj(i -> new Row(WHAT.get(i), now.get(i), later.get(i)))
        .toList();
  }

  private static List<String> states(Card card) {
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    Lengths lengths = words.lengths();
    return List.of(
        margin(travel.droop(), lengths),
        decided(travel.droop(), words),
        margin(travel.bump(), lengths),
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

  private static String margin(EndFindings end, Lengths lengths) {
    return (end.marginAtLeast() && end.marginMm().isPresent() ? "at least " : "")
        + figure(end.marginMm(), lengths);
  }

  private static String total(Total total, Lengths lengths) {
    return (total.atLeast() && total.mm().isPresent() ? "at least " : "")
        + total.mm().map(f -> unsigned(f, lengths)).orElse("not known");
  }

  private static String figure(Optional<Figure> mm, Lengths lengths) {
    return mm.map(f -> signed(f, lengths)).orElse("not known");
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
