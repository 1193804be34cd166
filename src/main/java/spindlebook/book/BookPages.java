package spindlebook.book;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.drawing.State;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.log.Histories;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.StoryEntry;
import spindlebook.words.EntryWords;

/** The car's whole life as a story, newest first: rounds, changes, drives, their entries inside. */
public record BookPages(Histories histories, BookStore store) {
  private static final int A_PAGE = 300;

  /** Kinds of entries that come many in a row. */
  private static final Set<String> SMALL =
      Set.of("alignment", "definition", "fastener", "joint-place", "part", "photo", "target");

  /** One filter of the book, as links; {@code open} while it is used. */
  public record Filter(String name, boolean open, List<Option> options) {
    /** One choice of a filter. */
    public record Option(String word, String href, boolean here) {}
  }

  /**
   * A round with what was read in it, or several small things of one kind in a row.
   *
   * @param head what is seen of it while it is closed
   * @param entries inside it, newest first; empty where the head is the one entry itself
   */
  public record Chapter(StoryEntry head, List<StoryEntry> entries) {}

  public void book(Context ctx) {
    String car = ctx.pathParam("car");
    CarBook history = histories.of(car);
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    Map<String, String> chosen = new LinkedHashMap<>();
    for (String name : List.of("corner", "kind", "adjuster")) {
      String value = ctx.queryParam(name);
      if (value != null && !value.isBlank()) {
        chosen.put(name, value);
      }
    }
    long before = Math.max(0, Addressed.position(ctx.queryParam("before")));
    List<Long> positions =
        store.page(
            car,
            chosen.get("corner"),
            chosen.get("kind"),
            about(chosen.get("adjuster"), history),
            before,
            A_PAGE + 1);
    String older =
        positions.size() > A_PAGE
            ? address(car, chosen) + "&before=" + positions.get(A_PAGE - 1)
            : null;
    List<Chapter> chapters = story(history, positions.stream().limit(A_PAGE).toList());
    PageFrame frame =
        CornerBar.under(history, "The book", "The book")
            .sub(history.details().orElseThrow().name() + ", newest first")
            .ownSheets("story.css");
    String tables = "/cars/" + car + "/tables";
    Html.show(
        ctx,
        Html.TEMPLATES.bookBook(frame, filters(history, car, chosen), chapters, older, tables));
  }

  /**
   * Positions of an adjuster's adjustments, as they stand, and of what corrects or answers them;
   * null for no adjuster.
   */
  private static Set<Long> about(String adjuster, CarBook history) {
    if (adjuster == null) {
      return null;
    }
    Map<String, String> roots = new HashMap<>();
    Set<Long> about = new HashSet<>();
    for (Noted entry : history.entries()) {
      String target =
          entry.content() instanceof Content.Correction c
              ? c.target()
              : entry.content() instanceof Content.Answer a ? a.target() : entry.key();
      String root = roots.getOrDefault(target, target);
      roots.put(entry.key(), root);
      if (history.standing(root).or(() -> history.original(root)).orElse(null)
              instanceof Content.Adjustment adjustment
          && adjustment.adjuster().equals(adjuster)) {
        about.add(entry.n());
      }
    }
    return about;
  }

  private List<Chapter> story(CarBook history, List<Long> positions) {
    Map<Long, Noted> byN = history.entries().stream().collect(Collectors.toMap(Noted::n, n -> n));
    EntryWords words = new EntryWords(history);
    Map<String, Card> cards = new LinkedHashMap<>();
    history.corners().forEach(c -> cards.put(c, histories.card(history.car().orElseThrow(), c)));
    Map<String, List<StoryEntry>> chapters = new LinkedHashMap<>();
    String run = "";
    for (long n : positions) {
      Noted noted = byN.get(n);
      if (noted == null) {
        continue;
      }
      String kind = kind(noted.content());
      // What is small stands with its like in a row; a round is one wherever phones wrote between.
      run = SMALL.contains(kind) ? (run.startsWith(kind) ? run : kind + " " + n) : "";
      chapters
          .computeIfAbsent(run.isEmpty() ? of(history, noted) : run, c -> new ArrayList<>())
          .add(
              new StoryEntry(
                  n,
                  Days.minute(noted.at()),
                  noted.who(),
                  kind,
                  words.of(noted.content()),
                  notes(history, noted),
                  state(cards, noted.key()),
                  "/entries/" + noted.key()));
    }
    return chapters.entrySet().stream()
        .map(c -> chapter(history, c.getKey(), c.getValue()))
        .toList();
  }

  /** The key of the round an entry belongs to, or its own. */
  private static String of(CarBook history, Noted noted) {
    Content content = noted.content();
    if (content instanceof Content.Reading reading) {
      content = history.original(reading.height()).orElse(content);
    }
    return content instanceof Content.Height height ? height.round() : noted.key();
  }

  private static Chapter chapter(CarBook history, String of, List<StoryEntry> entries) {
    StoryEntry last = entries.get(0);
    if (entries.size() == 1) {
      return new Chapter(last, List.of());
    }
    String text =
        history
            .original(of)
            .filter(Content.Round.class::isInstance)
            .map(
                round ->
                    new EntryWords(history).of(round)
                        + ": "
                        + Counted.of(entries.size(), "entry", "entries"))
            .orElse(
                Capital.of(last.kind().replace("-", " "))
                    + ": "
                    + Counted.of(entries.size(), "entry", "entries"));
    boolean doubt = entries.stream().anyMatch(e -> e.state() == State.IN_DOUBT);
    long noted = entries.stream().filter(e -> !e.notes().isEmpty()).count();
    List<String> notes =
        noted == 0 ? List.of() : List.of(noted + " corrected, withdrawn or answered");
    State state = doubt ? State.IN_DOUBT : null;
    return new Chapter(
        new StoryEntry(last.number(), last.when(), last.who(), "", text, notes, state, null),
        List.copyOf(entries));
  }

  private static List<String> notes(CarBook history, Noted noted) {
    List<String> notes = new ArrayList<>();
    if (history.takenBack(noted.key())) {
      notes.add("withdrawn");
    } else if (history.standing(noted.key()).filter(c -> !c.equals(noted.content())).isPresent()) {
      notes.add(
          "corrected since: "
              + new EntryWords(history).of(history.standing(noted.key()).orElseThrow()));
    }
    history
        .answered(noted.key())
        .ifPresent(so -> notes.add(so ? "answered: it is so" : "answered: it does not count"));
    return notes;
  }

  static String kind(Content content) {
    return spindlebook.log.Bodies.kind(content);
  }

  private static State state(Map<String, Card> cards, String key) {
    for (Card card : cards.values()) {
      State state = EntryPages.state(card, key);
      if (state != null) {
        // What simply holds needs no mark.
        return state == State.LIVE ? null : state;
      }
      if (card.doubts().stream().anyMatch(d -> d.key().equals(key))) {
        return State.IN_DOUBT;
      }
    }
    return null;
  }

  private List<Filter> filters(CarBook history, String car, Map<String, String> chosen) {
    Map<String, String> corners = new LinkedHashMap<>();
    Map<String, String> adjusters = new LinkedHashMap<>();
    for (String corner : history.corners()) {
      Card card = histories.card(car, corner);
      corners.put(corner, card.place().words());
      card.adjusters().forEach(a -> adjusters.put(a.adjuster().adjuster(), a.adjuster().name()));
    }
    Map<String, String> kinds = new LinkedHashMap<>();
    store.kinds(car).forEach(k -> kinds.put(k, k));
    return List.of(
        filter("corner", corners, car, chosen),
        filter("kind", kinds, car, chosen),
        filter("adjuster", adjusters, car, chosen));
  }

  private static Filter filter(
      String name, Map<String, String> values, String car, Map<String, String> chosen) {
    List<Filter.Option> options = new ArrayList<>();
    Map<String, String> without = new LinkedHashMap<>(chosen);
    without.remove(name);
    options.add(new Filter.Option("all", address(car, without), !chosen.containsKey(name)));
    values.forEach(
        (value, word) -> {
          Map<String, String> with = new LinkedHashMap<>(without);
          with.put(name, value);
          options.add(new Filter.Option(word, address(car, with), value.equals(chosen.get(name))));
        });
    return new Filter(name, chosen.containsKey(name), options);
  }

  private static String address(String car, Map<String, String> chosen) {
    return "/cars/"
        + car
        + "/book?"
        + chosen.entrySet().stream()
            .map(
                e ->
                    e.getKey()
                        + "="
                        + java.net.URLEncoder.encode(
                            e.getValue(), java.nio.charset.StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
  }
}
