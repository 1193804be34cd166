package spindlebook.telltale;

import java.util.Optional;
import spindlebook.definition.Dimension;
import spindlebook.definition.WatchPoint;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.Card;
import spindlebook.page.Asked;
import spindlebook.units.AmountUnit;
import spindlebook.units.TapeFormat;
import spindlebook.units.TypedAmount;
import spindlebook.units.TypedLength;

/** What is read after a drive: one small form for each thing. */
enum TelltaleForm {
  RING("Ring on the shock shaft") {
    @Override
    Content.Telltale ask(Asked a, Card card) {
      Optional<Double> strokeMm = strokeMm(card);
      TypedLength ring =
          a.length("ring", "From the ring to the shock's body")
              .hint("Along the shaft. Push the ring back to the body afterwards.")
              .check(
                  l -> l.mm() <= strokeMm.orElse(l.mm()) + PAST_STROKE_MM,
                  strokeMm
                      .map(
                          mm ->
                              "The shock's stroke is "
                                  + TapeFormat.length(mm, a.unit(), 16)
                                  + ": read the ring again, or correct the shock's lengths in the"
                                  + " specs.")
                      .orElse(""))
              .needed("Type how far the ring sits from the shock's body, such as 2 1/4.");
      HeightName at =
          a.<HeightName>one("at", "The wheel stood")
              .hint("As the ring was read: the shock's length there is looked up in the book.")
              .option(HeightName.ON_THE_STRAP, HeightName.ON_THE_STRAP.words())
              .option(HeightName.RIDE, HeightName.RIDE.words())
              .option("elsewhere", null, "elsewhere", "")
              .first(HeightName.ON_THE_STRAP)
              .read();
      TypedLength shock =
          a.length("shock", "Elsewhere: the shock eye to eye, as it was then").read();
      String words = a.line("ring-words", "In your words", 200).hint("May be left empty.").read();
      return telltale(
          a,
          card,
          TelltaleKind.SHOCK_RING,
          null,
          "ring",
          ring,
          shock,
          shock == null ? at : null,
          words);
    }
  },
  STRAP("Limit strap") {
    @Override
    Content.Telltale ask(Asked a, Card card) {
      TypedLength length =
          a.length("strap", "Limit strap, mount to mount")
              .hint("The wheel hanging on it.")
              .needed("Type the strap's length mount to mount, such as 18 3/8.");
      TypedAmount pull =
          a.amount("pull", "Pulled with", AmountUnit.POUND)
              .hint("The same each time, and the book tells how long the strap lasts.")
              .check(p -> p.amount() > 0, "Type a weight, such as 200 or 90 kg.")
              .read();
      String much = a.has("strap") ? a.text("strap").strip() : null;
      return a.ok()
          ? new Content.Telltale(
              card.corner(), TelltaleKind.STRAP_LENGTH, null, much, length, null, null, pull, null)
          : null;
    }
  },
  PRESSURE("Tyre pressure") {
    @Override
    Content.Telltale ask(Asked a, Card card) {
      a.line("pressure", "Tyre pressure as found", 40)
          .hint("As the gauge says it: 18 psi, 1.2 bar.")
          .needed("Type the pressure as the gauge says it, with its unit.");
      return telltale(
          a, card, TelltaleKind.TYRE_PRESSURE, null, "pressure", null, null, null, null);
    }
  },
  MARK("Clay or a witness mark") {
    @Override
    Content.Telltale ask(Asked a, Card card) {
      TelltaleKind what =
          a.<TelltaleKind>one("mark", "What it is")
              .option(TelltaleKind.CLAY, "clay", "squashed between two parts")
              .option(TelltaleKind.WITNESS_MARK, "witness mark", "paint, scuff, dent")
              .first(TelltaleKind.CLAY)
              .read();
      TypedLength length = a.length("thick", "How thick the clay is now, or how far").read();
      String words = a.line("mark-words", "Where, and what it shows", 200).read();
      WatchPoint point =
          a.more(
              "At a watch point",
              () -> {
                Asked.Keys<WatchPoint> points =
                    a.<WatchPoint>one("point", "Watch point")
                        .option("none", null, "none of them", "");
                card.watchPoints().forEach(w -> points.option(w.point(), w, w.name(), ""));
                return points
                    .firstKey("none")
                    .unknown("This corner has no such watch point.")
                    .read();
              });
      if (length == null && words == null && a.ok()) {
        a.wrong("mark-words", "Say where it is and what it shows, or how thick the clay is.");
      }
      return telltale(
          a, card, what, point == null ? null : point.point(), "thick", length, null, null, words);
    }
  };

  /** Rubber in the eyes, and two tapes: common practice, no source. */
  private static final double PAST_STROKE_MM = 6;

  private final String title;

  TelltaleForm(String title) {
    this.title = title;
  }

  String title() {
    return title;
  }

  /** Empty where the specs do not say it. */
  private static Optional<Double> strokeMm(Card card) {
    return card.given(Dimension.SHOCK_OPEN)
        .flatMap(
            open ->
                card.given(Dimension.SHOCK_CLOSED)
                    .map(closed -> open.length().mm() - closed.length().mm()))
        .filter(mm -> mm > 0);
  }

  /** Asks for it; null as long as it is not told without a fault. */
  abstract Content.Telltale ask(Asked a, Card card);

  /**
   * @param typed the field that says how much
   */
  private static Content.Telltale telltale(
      Asked a,
      Card card,
      TelltaleKind kind,
      String point,
      String typed,
      TypedLength length,
      TypedLength shock,
      HeightName at,
      String words) {
    String much = a.has(typed) ? a.text(typed).strip() : null;
    return a.ok()
        ? new Content.Telltale(card.corner(), kind, point, much, length, shock, at, null, words)
        : null;
  }
}
