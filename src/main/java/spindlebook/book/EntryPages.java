package spindlebook.book;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.card.IntoBook;
import spindlebook.card.PutBack;
import spindlebook.card.Shown;
import spindlebook.card.TakesAlong;
import spindlebook.drawing.State;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Change;
import spindlebook.fold.Doubted;
import spindlebook.fold.Noted;
import spindlebook.log.Histories;
import spindlebook.page.Action;
import spindlebook.page.Asked;
import spindlebook.page.Field;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.photo.PhotoView;
import spindlebook.photo.PhotoView.Shot;
import spindlebook.units.LengthUnit;
import spindlebook.words.EntryWords;

/** One entry: what it says, what became of it, the answer to a doubt, taking it back. */
public record EntryPages(Histories histories, BookStore store, IntoBook book) {
  public void entry(Context ctx) {
    String key = ctx.pathParam("entry");
    Histories.Located at = located(key);
    CarBook history = histories.of(at.car());
    Noted noted =
        history.entries().stream()
            .filter(e -> e.key().equals(key))
            .findFirst()
            .orElseThrow(NotFoundResponse::new);
    Optional<Card> card = Optional.ofNullable(at.corner()).map(c -> histories.card(at.car(), c));
    Optional<Doubted> doubt =
        card.flatMap(c -> c.doubts().stream().filter(d -> d.key().equals(key)).findFirst());
    boolean adjustment = noted.content() instanceof Content.Adjustment;
    Gone gone = gone(history, noted);
    EntryView view =
        new EntryView(
            key,
            new EntryWords(history).of(history.standing(key).orElse(noted.content())),
            "entry " + noted.n() + " · " + Days.minute(noted.at()) + " · " + noted.who(),
            card.map(c -> state(c, key)).orElse(null),
            notes(history, card, noted),
            gone.sentence(),
            gone.href(),
            doubt.map(Doubted::doubt).orElse(null),
            adjustment ? "This one holds: " + to(noted.content()) : "It is so, count it",
            adjustment ? "The other one holds" : "It is not so, leave it out",
            Optional.ofNullable(store.firstOf(key))
                .flatMap(history::standing)
                .filter(c -> doubt.isPresent() && c.getClass() == noted.content().getClass())
                .map(c -> "It corrects " + new EntryWords(history).of(c))
                .orElse(null),
            FormKey.fresh(history.n()),
            card.map(c -> correct(c, key)).orElse(null),
            takeBack(history, noted),
            noted.content().withdrawable() ? PutBack.of(history, key).orElse(null) : null,
            store.line(key));
    PageFrame frame =
        PageFrame.of("Entry " + noted.n() + " · Spindlebook", "Entry " + noted.n())
            .sub(BookPages.kind(noted.content()))
            .up("the book", "/cars/" + at.car() + "/book");
    if (card.isPresent()) {
      frame = frame.plan(Shown.plan(card.get()));
    }
    List<Action> links = new ArrayList<>();
    if (noted.content() instanceof Content.SignOff) {
      links.add(Action.link("The copy that was kept", "/sign-offs/" + key, false));
    }
    links.addAll(asKnown(history, at.corner(), noted.n()));
    if (!history.asOf(noted.n()).corners().isEmpty()) {
      String car = "/cars/" + at.car();
      links.add(Action.link("Compare with today", car + "/compare?one=" + noted.n(), false));
      links.add(
          Action.link("Put it back as it stood here", car + "/put-back?at=" + noted.n(), false));
    }
    List<Shot> shots =
        noted.content() instanceof Content.Photo
            ? PhotoView.itself(history, key)
            : PhotoView.ofEntry(history, key);
    Html.show(
        ctx,
        Html.TEMPLATES.bookEntry(
            frame, view, links, shots, card.map(c -> photo(c, noted)).orElse(null)));
  }

  /** Where a photo of it is taken; null for what has none. */
  private static String photo(Card card, Noted noted) {
    boolean shown =
        noted.content() instanceof Content.Adjustment || card.reading(noted.key()).isPresent();
    return shown ? "/corners/" + card.corner() + "/photos?of=entry." + noted.key() : null;
  }

  /** Why an entry is not on the card; both null when nothing took it away. */
  private record Gone(String sentence, String href) {
    static final Gone NO = new Gone(null, null);
  }

  private static Gone gone(CarBook history, Noted noted) {
    if (history.takenBack(noted.key())) {
      String along = TakesAlong.after(history, noted.key());
      return new Gone(("Withdrawn, so it does not count. " + along).strip(), null);
    }
    Content said = history.standing(noted.key()).orElse(noted.content());
    if (said instanceof Content.Reading r) {
      return hangsOn(history, r.height(), "The height it hangs on");
    }
    return said instanceof Content.Height h
        ? hangsOn(history, h.round(), "The round it belongs to")
        : Gone.NO;
  }

  private static Gone hangsOn(CarBook history, String key, String what) {
    String page = "/entries/" + key;
    if (history.takenBack(key)) {
      return new Gone(what + " was withdrawn, so it does not count.", page);
    }
    return history.answered(key).filter(itIsSo -> !itIsSo).isPresent()
        ? new Gone(what + " was answered not to be so, so it does not count.", page)
        : Gone.NO;
  }

  private static EntryView.TakeBack takeBack(CarBook history, Noted noted) {
    if (history.takenBack(noted.key()) || !noted.content().withdrawable()) {
      return null;
    }
    return new EntryView.TakeBack(
        TakesAlong.before(history, noted.key()),
        Field.of("reason", "Why").hint("It stays in the book and no longer counts."),
        FormKey.fresh(history.n()));
  }

  /**
   * The corner as the book stood when this was written; of a whole car's entry, all its corners.
   */
  private static List<Action> asKnown(CarBook history, String corner, long n) {
    CarBook then = history.asOf(n);
    return then.corners().stream()
        .filter(c -> corner == null || corner.equals(c))
        .map(
            c ->
                Action.link(
                    Capital.of(then.placeOf(c).orElseThrow().words()) + " as we knew it then",
                    "/corners/" + c + "?at=" + n,
                    false))
        .toList();
  }

  private static String to(Content content) {
    return content instanceof Content.Adjustment a ? a.to().inWords() : "";
  }

  /** How a reading, a height or an alignment stands; null of anything else. */
  static State state(Card card, String key) {
    return card.reading(key)
        .map(Shown::state)
        .or(
            () ->
                card.height(key)
                    .map(
                        h -> h.stands().counts() ? Shown.state(h.stop()) : Shown.state(h.stands())))
        .or(() -> card.aligned().read(key).map(a -> Shown.state(a.stands())))
        .orElse(null);
  }

  private static List<String> notes(CarBook history, Optional<Card> card, Noted noted) {
    List<String> notes = new ArrayList<>();
    EntryWords words = new EntryWords(history);
    for (Noted later : history.entries()) {
      if (later.content() instanceof Content.Correction c && c.target().equals(noted.key())) {
        notes.add(
            Days.minute(later.at()) + " · " + later.who() + " · " + words.of(later.content()));
      } else if (later.content() instanceof Content.Answer a && a.target().equals(noted.key())) {
        String said = a.itIsSo() ? "it is so" : "it does not count";
        notes.add(Days.minute(later.at()) + " · " + later.who() + " · answered: " + said);
      }
    }
    card.ifPresent(
        c -> {
          List<Change> because =
              c.reading(noted.key())
                  .map(r -> r.because())
                  .or(() -> c.height(noted.key()).map(h -> h.because()))
                  .or(() -> c.aligned().read(noted.key()).map(a -> a.because()))
                  .orElse(List.of());
          because.forEach(b -> notes.add("since then: " + b.words() + ", " + Days.day(b.at())));
        });
    return notes;
  }

  /** Only what is on the card can be corrected: not what was withdrawn or answered away. */
  private static String correct(Card card, String key) {
    if (card.height(key).isPresent()) {
      return "/heights/" + key + "/correct";
    }
    if (card.aligned().read(key).isPresent()) {
      return "/alignments/" + key + "/correct";
    }
    return card.reading(key).isPresent() ? "/readings/" + key + "/correct" : null;
  }

  public void answer(Context ctx) {
    String key = ctx.pathParam("entry");
    Histories.Located at = located(key);
    CarBook history = histories.of(at.car());
    if (!history.doubted(key)) {
      throw new NotFoundResponse();
    }
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    String said = a.text("answer");
    String first = store.firstOf(key);
    if (said.equals("correction")
        && first != null
        && history.original(first).isPresent()
        && history.answered(key).isEmpty()) {
      book.put(ctx, a, corrects(first, key, history.standing(key).orElseThrow()));
      Html.next(ctx, "/entries/" + first);
      return;
    }
    if (!said.equals("so") && !said.equals("not")) {
      Html.next(ctx, "/entries/" + key);
      return;
    }
    if (history.answered(key).isPresent() && store.line(a.key().key()).isEmpty()) {
      // Somebody was first; what was said stands there.
      Html.next(ctx, "/entries/" + key);
      return;
    }
    String words = a.line("words", "", 200).read();
    book.put(ctx, a, new Content.Answer(key, said.equals("so"), words));
    Html.next(ctx, at.corner() == null ? "/entries/" + key : "/corners/" + at.corner());
  }

  /** The second was meant for the first: it says so from now on, and the second does not count. */
  private static Map<String, Content> corrects(String first, String second, Content said) {
    Content body =
        said instanceof Content.Height height
            ? height.withDoubt(null)
            : said instanceof Content.Reading reading ? reading.withDoubt(null) : said;
    Map<String, Content> both = new LinkedHashMap<>();
    both.put("", new Content.Correction(first, body, "typed again"));
    both.put("not", new Content.Answer(second, false, null));
    return both;
  }

  public void takeBack(Context ctx) {
    String key = ctx.pathParam("entry");
    Histories.Located at = located(key);
    CarBook history = histories.of(at.car());
    if (!history.withdrawable(key)) {
      throw new NotFoundResponse();
    }
    Asked a = Asked.of(ctx, LengthUnit.INCH, 0);
    String reason = a.line("reason", "", 200).read();
    if (!history.takenBack(key)) {
      book.put(ctx, a, new Content.Correction(key, null, reason == null ? "" : reason));
    }
    Html.next(ctx, back(at, key));
  }

  /** Where one goes on after an entry is gone from the card, or is on it again. */
  private String back(Histories.Located at, String key) {
    if (at.corner() == null) {
      return "/cars/" + at.car();
    }
    Content content = histories.of(at.car()).original(key).orElseThrow(NotFoundResponse::new);
    if (content instanceof Content.Correction c) {
      return histories.of(at.car()).original(c.target()).orElse(null) instanceof Content.Height
          ? "/heights/" + c.target()
          : "/entries/" + c.target();
    }
    if (content instanceof Content.Reading r) {
      return "/heights/" + r.height() + "?steering=" + Posted.word(r.steering());
    }
    if (content instanceof Content.Alignment || content instanceof Content.Target) {
      return "/corners/" + at.corner() + "/alignment";
    }
    if (content instanceof Content.JointPlace) {
      return "/corners/" + at.corner() + "/linkage";
    }
    return content instanceof Content.Height ? "/heights/" + key : "/corners/" + at.corner();
  }

  private Histories.Located located(String key) {
    return histories.locate(key).filter(l -> l.car() != null).orElseThrow(NotFoundResponse::new);
  }
}
