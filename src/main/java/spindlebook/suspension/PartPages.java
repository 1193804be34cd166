package spindlebook.suspension;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Optional;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Place;
import spindlebook.entry.Content;
import spindlebook.entry.PartDone;
import spindlebook.entry.UseUnit;
import spindlebook.fold.CarBook;
import spindlebook.fold.InForce;
import spindlebook.fold.SeenPart;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.units.LengthUnit;

/** What is fitted where, since when, how much it was used, and what to look at next. */
public record PartPages(Histories histories, IntoBook book) {
  public void list(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    PageFrame frame = CornerBar.under(history, "Parts", "Parts").caution(Cautions.SETTING);
    Html.show(ctx, Html.TEMPLATES.suspensionParts(frame, new PartsView(history)));
  }

  /** A part that was fitted. */
  public void fit(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    Asked a = Asked.of(ctx, LengthUnit.INCH, lastChange(history));
    Content.Part fitted = ask(a, history, a.key().key(), Optional.empty());
    keep(ctx, history, a, fitted, "A part", "");
  }

  /** What was done with a part: looked at, taken off, or another one like it fitted. */
  public void part(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    SeenPart seen =
        history.parts().stream()
            .filter(p -> p.fitted().key().equals(ctx.pathParam("part")))
            .findFirst()
            .orElseThrow(NotFoundResponse::new);
    Asked a = Asked.of(ctx, LengthUnit.INCH, lastChange(history));
    PartDone done =
        a.<PartDone>one("done", "What was done with it")
            .option(PartDone.LOOKED_AT, "looked at", "it stays on")
            .option(PartDone.FITTED, "another one fitted", "its use begins anew")
            .option(PartDone.TAKEN_OFF, "taken off", "it is on the list no more")
            .first(PartDone.LOOKED_AT)
            .read();
    Content.Part said;
    if (done == PartDone.FITTED) {
      said = ask(a, history, seen.said().part(), Optional.of(seen.said()));
    } else {
      String words =
          a.line("words", "In your words", 200).hint("What you saw. May be left empty.").read();
      said = a.ok() ? seen.said().with(done, words) : null;
    }
    keep(ctx, history, a, said, seen.said().called(), "/" + seen.fitted().key());
  }

  private static long lastChange(CarBook history) {
    return history.corners().stream().mapToLong(c -> history.card(c).lastChange()).max().orElse(0);
  }

  private void keep(
      Context ctx, CarBook history, Asked a, Content.Part said, String heading, String below) {
    String parts = "/cars/" + history.car().orElseThrow() + "/parts";
    boolean check = a.text("back").equals("drive-check");
    String next = check ? parts.replace("/parts", "/drive-check") : parts;
    PageFrame frame =
        CornerBar.under(history, heading, Capital.of(heading))
            .up("Parts", parts)
            .caution(Cautions.SETTING);
    a.form(ctx, frame, parts + below, parts, () -> book.put(ctx, a, said, next));
  }

  /** Null while something is wrong. */
  private static Content.Part ask(
      Asked a, CarBook history, String part, Optional<Content.Part> was) {
    String what =
        a.line("what", "What it is", 60)
            .hint("Limit strap, upper uniball, shock, hose.")
            .was(was.map(Content.Part::what).orElse(null))
            .needed("Type what it is, such as limit strap.");
    Asked.Keys<Place> places = a.<Place>one("where", "Where").option("car", null, "whole car", "");
    history.corners().stream()
        .map(c -> history.placeOf(c).orElseThrow())
        .forEach(p -> places.option(p, p.words()));
    Place place =
        places
            .firstKey(was.flatMap(p -> history.placeOf(p.corner())).map(Posted::word).orElse("car"))
            .read();
    String size = a.line("size", "Size", 60).was(was.map(Content.Part::size).orElse(null)).read();
    String number =
        a.line("number", "Part number", 60).was(was.map(Content.Part::number).orElse(null)).read();
    UseUnit unit =
        a.one("unit", "Its use is counted in", UseUnit.class, UseUnit::words)
            .first(was.map(Content.Part::unit).orElse(UseUnit.HOURS))
            .read();
    Double after =
        number(a, "look-after", "Look at it after")
            .hint("Your figure; the maker's wins. Empty: never asked for.")
            .was(was.map(Content.Part::lookAfter).orElse(null))
            .read();
    Double before = number(a, "used-before", "Used before it came into the book").read();
    String corner = place == null ? null : history.cornerAt(place).orElseThrow();
    AdjusterKind kind = a.more("It is one of the things that are set", () -> kind(a, history, was));
    Optional<InForce> adjuster =
        kind == null || corner == null ? Optional.empty() : history.card(corner).adjuster(kind);
    if (kind != null && adjuster.isEmpty()) {
      a.wrong("kind", "That is not set there: say at which corner it is.");
    }
    String words = a.line("words", "In your words", 200).hint("May be left empty.").read();
    return a.ok()
        ? new Content.Part(
            history.car().orElseThrow(),
            corner,
            part,
            PartDone.FITTED,
            what,
            size,
            number,
            adjuster.map(i -> i.adjuster().adjuster()).orElse(null),
            unit,
            after,
            before,
            words)
        : null;
  }

  private static AdjusterKind kind(Asked a, CarBook history, Optional<Content.Part> was) {
    Asked.Keys<AdjusterKind> kinds =
        a.<AdjusterKind>one("kind", "Fitted, readings of it are measured again")
            .option("none", null, "none of them", "")
            .options(List.of(AdjusterKind.values()), AdjusterKind::words);
    return kinds
        .firstKey(
            was.filter(p -> p.adjuster() != null && p.corner() != null)
                .flatMap(p -> history.card(p.corner()).adjuster(p.adjuster()))
                .map(i -> Posted.word(i.adjuster().kind()))
                .orElse("none"))
        .read();
  }

  private static Asked.Box<Double> number(Asked a, String name, String label) {
    return a.number(name, label, 1e-3, 1e6, "Type a number, such as 20.");
  }
}
