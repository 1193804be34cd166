package spindlebook.use;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import spindlebook.corner.Content;
import spindlebook.corner.UseUnit;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeText;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** How long or how far the car was driven. */
sealed interface UseForm {
  record Accepted(Content.Use use) implements UseForm {}

  record Problems() implements UseForm {}

  /** Digits, one mark and a fraction: no units, no letters, no exponents. */
  Pattern NUMBER = Pattern.compile("[0-9][0-9 .,/½¼¾-]{0,11}|[½¼¾.][0-9]{0,6}");

  double MOST = 100_000;

  static UseForm read(Posted posted, String car) {
    UseUnit unit = posted.word("unit", UseUnit.class, UseUnit.HOURS);
    Double amount = amount(posted.text("amount").strip());
    if (amount == null) {
      posted.wrong("amount", "Type how many as a number, such as 3, 2.5 or 4 1/2.");
    }
    String words = posted.line("words", 300);
    return posted.ok()
        ? new Accepted(new Content.Use(car, unit, amount, posted.text("amount").strip(), words))
        : new Problems();
  }

  /** Null when it is no number, or none a car is driven. */
  private static Double amount(String typed) {
    if (!NUMBER.matcher(typed).matches()) {
      return null;
    }
    return Optional.of(typed.replace(',', '.'))
        .flatMap(plain -> TapeText.plain(plain, LengthUnit.INCH))
        .map(l -> l.mm() / LengthUnit.INCH.mm())
        .filter(n -> n > 0 && n <= MOST)
        .orElse(null);
  }

  static List<FormPart> parts(Posted posted) {
    UseUnit chosen = posted.word("unit", UseUnit.class, UseUnit.HOURS);
    return List.of(
        new FormPart.Typed(
            posted.fill(Field.of("amount", "How long or how far").inputmode("decimal"))),
        new FormPart.Chosen(
            new Choice(
                "unit",
                "Counted in",
                "",
                "",
                Arrays.stream(UseUnit.values())
                    .map(u -> new Choice.Option(Posted.word(u), u.words(), "", u == chosen))
                    .toList())),
        new FormPart.Typed(
            posted.fill(
                Field.of("words", "In your words").hint("Where, how hard. May be left empty."))));
  }
}
