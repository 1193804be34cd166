package spindlebook.round;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import spindlebook.card.ToReadAddress;
import spindlebook.corner.Card;
import spindlebook.corner.Content;
import spindlebook.corner.HeightName;
import spindlebook.corner.Layout;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenRound;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Pick;
import spindlebook.web.Posted;

/** A height as typed: its name, the spindle, the frame mark or where the mark is taken from. */
sealed interface HeightForm {
  record Accepted(Content.Height height) implements HeightForm {}

  record Problems() implements HeightForm {}

  /** Longer than any spindle stands above a floor. */
  double MOST_MM = 3000;

  /** What answers the question whether a height is to be kept without a mark. */
  String NO_MARK = "noMark";

  /**
   * @param ask whether a height without a mark is asked about, once: its position will not be known
   */
  static HeightForm read(Posted posted, SeenRound round, boolean ask) {
    if (posted.has(AxleHeightForm.PAIRING)) {
      return AxleHeightForm.read(posted, round, ask);
    }
    HeightName name = posted.word("name", HeightName.class, null);
    if (name == null) {
      posted.wrong("name", "Say which height this is.");
    }
    TypedLength spindle =
        posted.neededLength(
            "spindle", round.round().unit(), "Type the spindle's height above the floor.");
    if (spindle != null && spindle.mm() > MOST_MM) {
      posted.wrong("spindle", "'" + spindle.typed() + "' is higher than a car stands.");
    }
    String asAt = posted.line("markAsAt", 80);
    TypedLength mark = asAt == null ? posted.lengthFromZero("mark", round.round().unit()) : null;
    if (mark != null && mark.mm() > MOST_MM) {
      posted.wrong("mark", "'" + mark.typed() + "' is higher than a car stands.");
    }
    String label = posted.line("label", ToReadAddress.LONGEST_LABEL);
    boolean without = mark == null && asAt == null && posted.problem("mark").isEmpty();
    if (ask && without && !posted.text(NO_MARK).equals("keep")) {
      posted.wrong(
          "mark",
          posted.text(NO_MARK).equals("read")
              ? "Type the frame mark's height above the floor."
              : "No mark: its position will not be known, and nothing is worked out from it."
                  + " Keep it so?");
    }
    return posted.ok()
        ? new Accepted(
            new Content.Height(round.key(), name, label, spindle, mark, asAt, null, null))
        : new Problems();
  }

  /**
   * @param before position in the book: only a height above it has a mark to take
   */
  static List<FormPart> parts(
      Posted posted, Card card, SeenRound round, HeightName next, long before) {
    if (card.layout() == Layout.SOLID_AXLE_END) {
      return AxleHeightForm.parts(posted, card, round, next, before);
    }
    String unit = round.round().unit().word();
    HeightName chosen = posted.word("name", HeightName.class, next);
    List<Choice.Option> names = new ArrayList<>();
    for (HeightName name : HeightName.values()) {
      names.add(new Choice.Option(Posted.word(name), name.words(), "", name == chosen));
    }
    List<Pick> asAt = new ArrayList<>();
    lastMark(card, round, before)
        .ifPresent(
            h ->
                asAt.add(
                    new Pick(
                        "markAsAt",
                        h.key(),
                        "as at '" + h.words() + "', " + h.height().mark().typed())));
    if (!posted.problem("mark").isEmpty() && !posted.has("mark")) {
      asAt.add(new Pick(NO_MARK, "keep", "keep it without a mark"));
      asAt.add(new Pick(NO_MARK, "read", "I read the mark first"));
    }
    boolean markFirst = !posted.problem("mark").isEmpty() && posted.problem("spindle").isEmpty();
    return List.of(
        new FormPart.Chosen(
            new Choice("name", "This height is", "", posted.problem("name"), names)),
        new FormPart.Typed(
            posted.fill(
                focused(
                    Field.of("spindle", "Spindle above the floor")
                        .hint(last(card, chosen).orElse("8 1/4, 8.25 in, 210 mm"))
                        .unit(unit),
                    !markFirst))),
        new FormPart.Typed(
            posted.fill(
                focused(
                    Field.of("mark", "Frame mark above the floor")
                        .hint("Read it again, or say that it did not move.")
                        .unit(unit)
                        .picks(asAt.toArray(Pick[]::new)),
                    markFirst))),
        new FormPart.More(
            "Words for a height in between",
            posted.has("label"),
            List.of(new FormPart.Typed(posted.fill(Field.of("label", "In your words"))))));
  }

  static Field focused(Field field, boolean here) {
    return here ? field.focused() : field;
  }

  /** The latest mark that was read, first in this round. */
  static Optional<SeenHeight> lastMark(Card card, SeenRound round, long before) {
    Optional<SeenHeight> here =
        card.heightsOf(round.key()).stream()
            .filter(h -> h.n() < before && h.height().mark() != null && h.stands().counts())
            .reduce((first, second) -> second);
    return here.or(
        () ->
            card.heights().stream()
                .filter(h -> h.n() < before && h.height().mark() != null && h.stands().counts())
                .filter(h -> h.round().round().onTyres() == round.round().onTyres())
                .reduce((first, second) -> second));
  }

  static Optional<String> last(Card card, HeightName name) {
    return card.heights().stream()
        .filter(h -> h.name() == name && name != HeightName.IN_BETWEEN)
        .filter(h -> h.height().spindle() != null)
        .reduce((first, second) -> second)
        .map(
            h ->
                "Last time "
                    + h.height().spindle().typed()
                    + ", "
                    + spindlebook.card.Days.day(h.at())
                    + ".");
  }
}
