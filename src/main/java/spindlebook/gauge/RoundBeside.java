package spindlebook.gauge;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import spindlebook.card.Days;
import spindlebook.card.Shown;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Rounded;
import spindlebook.entry.Content;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.measured.AlignedFinding;
import spindlebook.measured.AlignedNote;
import spindlebook.measured.NotAtRide;
import spindlebook.measured.ReadAtRide;
import spindlebook.page.Link;
import spindlebook.sheet.FigureRow;
import spindlebook.uncertainty.Difference;
import spindlebook.units.LengthUnit;

/** What a round read of a figure at ride, and why it is not the one that counts, in words. */
record RoundBeside(AlignedFinding found, LengthUnit unit) {

  /** Null where no round read it, or what it read is what counts. */
  FigureRow.Beside view() {
    ReadAtRide read = found.beside();
    return read == null
        ? null
        : new FigureRow.Beside(
            "Read at ride in the round of " + round(read.last()) + ", " + stood(read.last()),
            figure(read),
            Shown.state(read.stands()),
            why(read),
            links(read.from()));
  }

  private FigureText figure(ReadAtRide read) {
    return read.angle()
        ? Rounded.degrees(read.value())
        : Rounded.signed(read.value(), unit.mm(), unit.word());
  }

  private List<String> why(ReadAtRide read) {
    List<String> why = new ArrayList<>();
    if (!read.not().isEmpty()) {
      why.add(
          "No alignment at ride, and held against no target: "
              + read.not().stream().map(NotAtRide::words).collect(Collectors.joining("; "))
              + ".");
    }
    if (read.last().height().stands() == Standing.IN_DOUBT) {
      why.add("The height it was read at is in doubt: it does not count until somebody answers.");
    } else if (read.stands() == Standing.IN_DOUBT) {
      why.add("In doubt: it does not count until somebody answers.");
    }
    // Above it stands already where there is a figure.
    if (read.acrossBorrowed() && !found.notes().contains(AlignedNote.ACROSS_BORROWED)) {
      why.add(AlignedNote.ACROSS_BORROWED.words());
    }
    if (!read.stands().counts()) {
      AlignmentView.because(read.from().stream().flatMap(r -> r.because().stream()))
          .ifPresent(why::add);
    }
    if (found.counts()) {
      why.add("What counts is the figure above, measured for itself." + apart());
    }
    return why;
  }

  private String apart() {
    return found
        .fromBeside()
        .map(
            (Difference d) ->
                (d.beyond() ? " The two differ by more than their ±: " : " The two agree: ")
                    + Rounded.degrees(d.apart()).words()
                    + ".")
        .orElse("");
  }

  static List<Link> links(List<SeenReading> read) {
    return read.stream()
        .map(r -> new Link("reading in the round of " + round(r), "/entries/" + r.key()))
        .toList();
  }

  private static String round(SeenReading read) {
    return Days.day(read.height().round().at());
  }

  private static String stood(SeenReading read) {
    Content.Round round = read.height().round().round();
    return "on "
        + (round.onTyres() ? "its tyres" : "stands")
        + ", spring "
        + (round.springIn() ? "in" : "out")
        + (round.wheelOn() ? "" : ", wheel off");
  }
}
