package spindlebook.use;

import io.javalin.http.Context;
import spindlebook.card.Addressed;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.entry.Content;
import spindlebook.entry.UseUnit;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.units.LengthUnit;

/** How long or how far a car was driven. */
public record UsePages(Histories histories, IntoBook book) {
  private static final double MOST = 100_000;

  private static final String HOW_MANY = "Type how many as a number, such as 3, 2.5 or 4 1/2.";

  /** The drives so far, and the form for another. */
  public void driven(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    Asked a = Asked.of(ctx, LengthUnit.INCH, history.n());
    Content.Use use = ask(a, car);
    if (a.ok()) {
      book.put(ctx, a, use);
      Html.next(ctx, "/cars/" + car + "/re-check");
      return;
    }
    PageFrame frame =
        CornerBar.under(history, "Use log", "Use log")
            .sub("Straps stretch and nuts work loose by it.");
    a.show(
        ctx,
        Html.TEMPLATES.useLog(
            a.page(frame, "/cars/" + car + "/use", "Save", null), UseList.of(history.uses())));
  }

  private static Content.Use ask(Asked a, String car) {
    Double amount =
        a.number("amount", "How long or how far", Double.MIN_VALUE, MOST, HOW_MANY)
            .inputmode("decimal")
            .needed(HOW_MANY);
    UseUnit unit =
        a.one("unit", "Counted in", UseUnit.class, UseUnit::words).first(UseUnit.HOURS).read();
    String words =
        a.line("words", "In your words", 300).hint("Where, how hard. May be left empty.").read();
    return a.ok() ? new Content.Use(car, unit, amount, a.text("amount").strip(), words) : null;
  }
}
