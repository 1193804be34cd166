package spindlebook.watch;

import io.javalin.http.Context;
import java.util.Collections;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.Allowance;
import spindlebook.definition.Dimension;
import spindlebook.definition.Given;
import spindlebook.definition.HeldBack;
import spindlebook.entry.Content;
import spindlebook.fold.Card;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.units.TypedLength;

/** The corner's given lengths, each with how unsure it is, and what is held back on purpose. */
public record GivenPages(Histories histories, IntoBook book) {
  /** What hangs on where things are read, asked once and seldom again. */
  private static final Set<Dimension> OF_READING =
      Collections.unmodifiableSet(
          EnumSet.of(
              Dimension.MARK_INBOARD,
              Dimension.READ_POINT_OUTBOARD,
              Dimension.TOE_ACROSS,
              Dimension.TOE_RANGE,
              Dimension.RACK_TRAVEL));

  public void given(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Asked a = Asked.of(ctx, card.details().unit(), card.lastChange());
    Map<String, Content.Definition> changed = ask(a, card);
    String corner = "/corners/" + card.corner();
    PageFrame frame = CornerBar.under(card, "Specs and allowances", "Specs and allowances");
    a.form(ctx, frame, corner + "/given", corner, () -> book.put(ctx, a, changed, corner));
  }

  /** What is new or was changed, each by what its entry's key ends in. */
  private static Map<String, Content.Definition> ask(Asked a, Card card) {
    Map<String, Content.Definition> changed = new LinkedHashMap<>();
    a.said("Leave empty what you do not know yet. An emptied box keeps what it had.");
    Map<Dimension, TypedLength> lengths = new EnumMap<>(Dimension.class);
    Stream.of(Dimension.values())
        .filter(d -> !OF_READING.contains(d))
        .forEach(d -> lengths.put(d, length(a, card, d)));
    a.aside(
        "Where mark, camber and toe are read",
        () -> {
          OF_READING.forEach(d -> lengths.put(d, length(a, card, d)));
          return lengths;
        });
    Map<Dimension, TypedLength> unsure =
        a.more(
            "How unsure they are, where you measured them",
            () -> {
              Map<Dimension, TypedLength> halfWidths = new EnumMap<>(Dimension.class);
              // Nothing is computed from the rack's travel that its ± would change.
              for (Dimension d : EnumSet.complementOf(EnumSet.of(Dimension.RACK_TRAVEL))) {
                halfWidths.put(
                    d,
                    a.length(unsure(d), "± of: " + d.words())
                        .was(now(card, d).map(Given::halfWidth).orElse(null))
                        .read());
              }
              return halfWidths;
            });
    for (Dimension d : Dimension.values()) {
      TypedLength length = lengths.get(d);
      if (length == null && unsure.get(d) != null && !a.has(Posted.word(d))) {
        a.wrong(unsure(d), "This ± needs the length it belongs to, above.");
      }
      Given typed = length == null ? null : new Given(d, length, unsure.get(d));
      if (typed != null && !typed.same(card.given(d).orElse(null))) {
        changed.put(Integer.toString(d.ordinal()), Content.Definition.of(card.corner(), typed));
      }
    }
    ordered(a, card, lengths, Dimension.SHOCK_CLOSED, Dimension.SHOCK_OPEN, "shorter than open");
    ordered(
        a,
        card,
        lengths,
        Dimension.TYRE_SQUASHED_RADIUS,
        Dimension.TYRE_LOADED_RADIUS,
        "smaller than loaded");
    return a.aside(
        "Held back: stretch, impact, shock, ground",
        () -> {
          for (Allowance allowance : Allowance.values()) {
            HeldBack typed = heldBack(a, allowance, card.heldBack().get(allowance));
            if (typed != null) {
              changed.put("h" + allowance.ordinal(), Content.Definition.of(card.corner(), typed));
            }
          }
          return changed;
        });
  }

  /** Asks back, at what was typed, where the small one is no smaller than the large one. */
  private static void ordered(
      Asked a,
      Card card,
      Map<Dimension, TypedLength> typed,
      Dimension small,
      Dimension large,
      String than) {
    TypedLength less = stands(card, typed, small);
    TypedLength more = stands(card, typed, large);
    if (less != null && more != null && less.mm() >= more.mm()) {
      a.wrong(
          Posted.word(typed.get(small) == null ? large : small),
          less.words() + " must be " + than + ", " + more.words() + ". Swapped?");
    }
  }

  private static TypedLength stands(Card card, Map<Dimension, TypedLength> typed, Dimension d) {
    TypedLength now = typed.get(d);
    return now != null ? now : now(card, d).map(Given::length).orElse(null);
  }

  private static TypedLength length(Asked a, Card card, Dimension d) {
    return a.length(Posted.word(d), Capital.of(d.words()))
        .hint(before(card, d) + hint(d))
        .was(now(card, d).map(Given::length).orElse(null))
        .read();
  }

  private static Optional<Given> now(Card card, Dimension d) {
    return Optional.ofNullable(card.given().get(d))
        .filter(seen -> seen.stands().counts())
        .map(seen -> seen.given());
  }

  private static String unsure(Dimension dimension) {
    return Posted.word(dimension) + "-unsure";
  }

  /** What it was before its part was changed. */
  private static String before(Card card, Dimension d) {
    return card.givenBefore(d)
        .map(
            g ->
                "Measure again: it was "
                    + g.given().length().typed()
                    + " before "
                    + g.because().get(0).words()
                    + ". ")
        .orElse("");
  }

  private static String hint(Dimension d) {
    return switch (d) {
      case NEW_STRAP_LENGTH -> "Unloaded, at the setting it came with.";
      case STOP_CRUSH ->
          "From touch to solid, measured or from the drawing. A full bump read solid counts before"
              + " it.";
      case MARK_TO_LOWEST_FRAME -> "Straight down, frame level.";
      case MARK_INBOARD -> "0 or empty when the mark stands right over the spindle.";
      case READ_POINT_OUTBOARD -> "Only with camber read at each height; empty otherwise.";
      case TYRE_SQUASHED_RADIUS -> "Spindle to ground with the tyre flattened.";
      case TOE_ACROSS -> "Slot to slot of a toe plate, or rim edge to rim edge: front to rear.";
      case TOE_RANGE -> "Your limit for bump steer; nothing is assumed when it is empty.";
      default -> "";
    };
  }

  /**
   * Null where nothing was changed.
   *
   * @param now null where nothing is held back yet
   */
  private static HeldBack heldBack(Asked a, Allowance allowance, HeldBack now) {
    String name = Posted.word(allowance);
    String label = "Held back: " + allowance.words();
    String basis = now == null ? "" : "Its number is from: " + now.basis() + ".";
    if (allowance.share()) {
      Double percent =
          a.number(name, label, 0, 100, "This is a share: type 0 to 100 per cent.")
              .unit("%")
              .hint(basis)
              .was(now == null ? null : now.percent())
              .read();
      boolean same = percent == null || (now != null && now.percent().equals(percent));
      return same ? null : new HeldBack(allowance, null, percent, null, null);
    }
    TypedLength length =
        a.length(name, label).hint(basis).was(now == null ? null : now.length()).read();
    boolean same = length == null || (now != null && now.length().mm() == length.mm());
    return same
        ? null
        : new HeldBack(allowance, length, null, now == null ? null : now.halfWidth(), null);
  }
}
