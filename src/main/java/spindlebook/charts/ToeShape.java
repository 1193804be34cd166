package spindlebook.charts;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import spindlebook.alignment.BumpShape;
import spindlebook.alignment.FaultSeen;
import spindlebook.alignment.ShapeMeaning;
import spindlebook.alignment.TellsApart;
import spindlebook.alignment.TieRodFault;
import spindlebook.alignment.Window;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.charts.BumpSteerView.Fact;
import spindlebook.charts.BumpSteerView.Meaning;
import spindlebook.curve.Node;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.Rounded;
import spindlebook.uncertainty.Figure;

/** What the shape of a toe curve says of the tie rod, and the slope and bow it is read from. */
record ToeShape(ToeWords words, BumpShape shape) {
  /** What tells the cases of a fault apart comes before what makes one surer of it. */
  private static final Set<TellsApart> CASES =
      Set.of(TellsApart.ROD_HEIGHTS, TellsApart.INNER_SPREAD);

  // --- the tie rod

  List<Meaning> meaning(ShapeMeaning says) {
    return says.said().isEmpty()
        ? List.of(
            new Meaning(
                "No fault of the tie rod shows",
                "a small one may still be there: slope and bow are within what the ± of these"
                    + " readings alone could make",
                ""))
        : says.said().stream().map(this::meaning).toList();
  }

  private Meaning meaning(FaultSeen fault) {
    return new Meaning(
        "Tie rod: " + fault.fault().words(),
        fault.sureness().words() + sure(fault),
        "A tie rod that fits the arms leaves toe alone; this one moves it by "
            + effect(fault)
            + " between ride and "
            + words.place(farMm())
            + "."
            + cure(fault.fault()));
  }

  /** Only of heights: which end of a rod that is too long is at fault, toe does not say. */
  private static String cure(TieRodFault fault) {
    return switch (fault) {
      case OUTER_TOO_HIGH -> " The outer end lower, or the inner end higher, takes that out.";
      case OUTER_TOO_LOW -> " The outer end higher, or the inner end lower, takes that out.";
      case TOO_LONG, TOO_SHORT -> "";
    };
  }

  private static String sure(FaultSeen fault) {
    String what = fault.fault().height() ? "slope" : "bow";
    String chance = "the ± of the readings alone could make";
    return fault.sureness() == FaultSeen.Sureness.PLAIN
        ? ". The " + what + " is more than three times what " + chance
        : ". The " + what + " is more than " + chance + ", but not three times that";
  }

  /** With the ± of the slope or bend that it comes from. */
  private static String effect(FaultSeen fault) {
    double times = Math.abs(fault.effectRad() / fault.figure().value());
    Figure rad = fault.figure().times(fault.figure().value() < 0 ? -times : times);
    return Rounded.plainDegrees(rad).words();
  }

  static List<String> next(ShapeMeaning says) {
    return says.next().stream()
        .sorted(Comparator.comparing((TellsApart t) -> !CASES.contains(t)))
        .map(t -> Capital.of(t.words()) + ".")
        .toList();
  }

  // --- slope and bow

  /**
   * @param all the places read, each once
   * @param readings how many readings those are
   */
  List<Fact> facts(List<Node> all, int readings) {
    double armMm = farMm() - shape.rideMm();
    Figure bow = shape.curvature().times(armMm * armMm / 2);
    return List.of(
        new Fact(
            "Toe at ride",
            Rounded.degrees(shape.toeAtRideRad()),
            "+ front edge inward; by the curve fitted, so not quite as read"),
        new Fact(
            "Slope at ride",
            words.slope(shape.slope()),
            "what going up from ride does: − turns the front edge outward, + inward"),
        new Fact("Bow", Rounded.degrees(bow), bowWords(bow)),
        new Fact(
            "Places used",
            FigureText.of(shape.readings() + " of " + all.size(), ""),
            placesWords(all.size(), readings)));
  }

  private String bowWords(Figure bow) {
    return "how far the curve leaves that slope at "
        + words.place(farMm())
        + ": + toes in at both ends, − toes out"
        + (Math.abs(bow.value()) < bow.U() ? "; less than its ±, so no bow is seen" : "")
        + ". As curvature "
        + words.curvatureWords(shape.curvature());
  }

  private String placesWords(int all, int readings) {
    return Counted.of(readings, "reading")
        + "; those at one height count as one place"
        + (shape.readings() < all ? ", open marks in the chart do not count" : "")
        + ". A curve of degree "
        + shape.degree()
        + " from "
        + words.place(shape.window().fromMm())
        + " to "
        + words.place(shape.window().toMm());
  }

  /** The end of the stretch that lies further from ride. */
  private double farMm() {
    Window w = shape.window();
    return shape.rideMm() - w.fromMm() >= w.toMm() - shape.rideMm() ? w.fromMm() : w.toMm();
  }

  /** Why a place that was read is not in slope and bow, for its mark in the chart. */
  static String leftOut(ToeWords words, List<Node> out, Window usable) {
    String where =
        out.stream()
            .map(n -> n.positionMm().value())
            .map(
                at ->
                    words.place(at)
                        + (at > usable.toMm()
                            ? " lies beyond the solid bump stop"
                            : " lies below the strap as set"))
            .collect(Collectors.joining(", "));
    return where
        + ": outside the usable travel; it carries the line as far as the stop, slope and bow do"
        + " without it";
  }
}
