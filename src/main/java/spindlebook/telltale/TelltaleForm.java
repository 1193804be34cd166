package spindlebook.telltale;

import java.util.ArrayList;
import java.util.List;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;
import spindlebook.corner.TelltaleKind;
import spindlebook.corner.WatchPoint;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** What is read after a drive: one small form for each thing. */
sealed interface TelltaleForm {
  record Accepted(Content.Telltale telltale) implements TelltaleForm {}

  record Problems() implements TelltaleForm {}

  String NONE = "none";

  /** One of the four forms. */
  enum Kind {
    RING,
    STRAP,
    PRESSURE,
    MARK
  }

  static TelltaleForm read(Kind kind, Posted posted, Card card) {
    LengthUnit unit = card.details().unit();
    Content.Telltale telltale =
        switch (kind) {
          case RING -> ring(posted, card.corner(), unit);
          case STRAP -> strap(posted, card.corner(), unit);
          case PRESSURE -> pressure(posted, card.corner());
          case MARK -> mark(posted, card, unit);
        };
    return posted.ok() && telltale != null ? new Accepted(telltale) : new Problems();
  }

  private static Content.Telltale ring(Posted posted, String corner, LengthUnit unit) {
    TypedLength ring =
        posted.neededLength(
            "ring", unit, "Type how far the ring sits from the shock's body, such as 2 1/4.");
    TypedLength shock = posted.lengthFromZero("shock", unit);
    HeightName at = posted.word("at", HeightName.class, null);
    String words = posted.line("ring-words", 200);
    return posted.ok()
        ? new Content.Telltale(
            corner,
            TelltaleKind.SHOCK_RING,
            null,
            posted.text("ring").strip(),
            ring,
            shock,
            shock == null ? at : null,
            words)
        : null;
  }

  private static Content.Telltale strap(Posted posted, String corner, LengthUnit unit) {
    TypedLength length =
        posted.neededLength(
            "strap", unit, "Type the strap's length mount to mount, such as 18 3/8.");
    return length == null
        ? null
        : new Content.Telltale(
            corner,
            TelltaleKind.STRAP_LENGTH,
            null,
            posted.text("strap").strip(),
            length,
            null,
            null,
            null);
  }

  private static Content.Telltale pressure(Posted posted, String corner) {
    String typed =
        posted.neededLine("pressure", 40, "Type the pressure as the gauge says it, with its unit.");
    return typed == null
        ? null
        : new Content.Telltale(
            corner, TelltaleKind.TYRE_PRESSURE, null, typed, null, null, null, null);
  }

  private static Content.Telltale mark(Posted posted, Card card, LengthUnit unit) {
    boolean clay = posted.text("mark").equals("clay");
    TypedLength length = posted.lengthFromZero("thick", unit);
    String words = posted.line("mark-words", 200);
    String point = posted.has("point") ? posted.text("point") : NONE;
    if (!point.equals(NONE) && card.watchPoint(point).isEmpty()) {
      posted.wrong("point", "This corner has no such watch point.");
    }
    if (length == null && words == null && posted.ok()) {
      posted.wrong("mark-words", "Say where it is and what it shows, or how thick the clay is.");
    }
    return posted.ok()
        ? new Content.Telltale(
            card.corner(),
            clay ? TelltaleKind.CLAY : TelltaleKind.WITNESS_MARK,
            point.equals(NONE) ? null : point,
            posted.has("thick") ? posted.text("thick").strip() : null,
            length,
            null,
            null,
            words)
        : null;
  }

  static List<FormPart> parts(Kind kind, Posted posted, Card card) {
    String unit = card.details().unit().word();
    return switch (kind) {
      case RING -> ringParts(posted, unit);
      case STRAP ->
          List.of(
              new FormPart.Typed(
                  posted.fill(
                      Field.of("strap", "Limit strap, mount to mount")
                          .hint("The wheel hanging on it.")
                          .unit(unit))));
      case PRESSURE ->
          List.of(
              new FormPart.Typed(
                  posted.fill(
                      Field.of("pressure", "Tyre pressure as found")
                          .hint("As the gauge says it: 18 psi, 1.2 bar."))));
      case MARK -> markParts(posted, card, unit);
    };
  }

  private static List<FormPart> ringParts(Posted posted, String unit) {
    String at = posted.text("at");
    return List.of(
        new FormPart.Typed(
            posted.fill(
                Field.of("ring", "From the ring to the shock's body")
                    .hint("Along the shaft. Push the ring back to the body afterwards.")
                    .unit(unit))),
        new FormPart.Chosen(
            new Choice(
                "at",
                "The wheel stood",
                "As the ring was read: the shock's length there is looked up in the book.",
                "",
                List.of(
                    option(HeightName.ON_THE_STRAP, at),
                    option(HeightName.RIDE, at),
                    new Choice.Option("elsewhere", "elsewhere", "", at.equals("elsewhere"))))),
        new FormPart.Typed(
            posted.fill(
                Field.of("shock", "Elsewhere: the shock eye to eye, as it was then").unit(unit))),
        new FormPart.Typed(
            posted.fill(Field.of("ring-words", "In your words").hint("May be left empty."))));
  }

  private static Choice.Option option(HeightName name, String chosen) {
    boolean first = name == HeightName.ON_THE_STRAP && chosen.isEmpty();
    return new Choice.Option(
        Posted.word(name), name.words(), "", first || Posted.word(name).equals(chosen));
  }

  private static List<FormPart> markParts(Posted posted, Card card, String unit) {
    boolean clay = !posted.text("mark").equals("witness-mark");
    String point = posted.has("point") ? posted.text("point") : NONE;
    List<Choice.Option> points = new ArrayList<>();
    points.add(new Choice.Option(NONE, "none of them", "", point.equals(NONE)));
    for (WatchPoint w : card.watchPoints()) {
      points.add(new Choice.Option(w.point(), w.name(), "", w.point().equals(point)));
    }
    return List.of(
        new FormPart.Chosen(
            new Choice(
                "mark",
                "What it is",
                "",
                "",
                List.of(
                    new Choice.Option("clay", "clay", "squashed between two parts", clay),
                    new Choice.Option(
                        "witness-mark", "witness mark", "paint, scuff, dent", !clay)))),
        new FormPart.Typed(
            posted.fill(Field.of("thick", "How thick the clay is now, or how far").unit(unit))),
        new FormPart.Typed(posted.fill(Field.of("mark-words", "Where, and what it shows"))),
        new FormPart.More(
            "At a watch point",
            !point.equals(NONE) || !posted.problem("point").isEmpty(),
            List.of(
                new FormPart.Chosen(
                    new Choice("point", "Watch point", "", posted.problem("point"), points)))));
  }
}
