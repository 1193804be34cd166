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
  private TrialRows() {}

  static List<Row> of(Card today, Card then) {
    List<Row> now = states(today);
    List<Row> later = states(then);
    return IntStream.range(0, now.size())
        .mapToObj(i -> new Row(now.get(i).what(), now.get(i).today(), later.get(i).today()))
        .toList();
  }

  private static List<Row> states(Card card) {
    TravelFindings travel = CornerTravel.of(card);
    TravelWords words = new TravelWords(card, travel);
    return List.of(
        row("Margin in droop", margin(travel.droop(), words.lengths())),
        row("Droop", decided(travel.droop(), words)),
        row("Margin in bump", margin(travel.bump(), words.lengths())),
        row("Bump", decided(travel.bump(), words)),
        row("Travel as set", total(travel.asSet(), words.lengths())),
        row("Travel as it could be", total(travel.asItCouldBe(), words.lengths())),
        row(
            "In mid-travel",
            travel.midTravel().isEmpty()
                ? "nothing short"
                : String.join(" ", travel.midTravel().stream().map(words::midTravel).toList())));
  }

  private static Row row(String what, String state) {
    return new Row(what, state, state);
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

  static String figure(Optional<Figure> mm, Lengths lengths) {
    return mm.map(f -> signed(f, lengths)).orElse("not known");
  }

  private static String unsigned(Figure mm, Lengths lengths) {
    return lengths.bare(mm.value())
        + " ± "
        + lengths.plusMinus(mm.U())
        + " "
        + lengths.unit().word();
  }

  static String signed(Figure mm, Lengths lengths) {
    return lengths.signed(mm.value()).replace('-', '−')
        + " ± "
        + lengths.plusMinus(mm.U())
        + " "
        + lengths.unit().word();
  }
}
