package spindlebook.round;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import spindlebook.card.ToReadAddress;
import spindlebook.entry.Content;
import spindlebook.entry.Quantity;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.page.Asked;
import spindlebook.plan.JackPlan;

/** What a round sets out to read: as it was asked for, in words, and what is done of it. */
final class RoundPlan {
  static final String CHANGE = "change";
  private static final String AGAIN = "again";
  private static final int LISTED_ONE_BY_ONE = 6;

  private RoundPlan() {}

  /**
   * What an address or a form asks for: what is needed, each named; what no longer holds, all of it
   * or exactly what one change moved; empty for a round of everything.
   */
  static List<Content.ToRead> asked(Context ctx, Card card) {
    List<String> needs = sentAll(ctx, ToReadAddress.NEED);
    if (!needs.isEmpty()) {
      return needs.stream().flatMap(n -> ToReadAddress.read(card, n).stream()).distinct().toList();
    }
    if (!again(ctx)) {
      return List.of();
    }
    String change = change(ctx);
    return change == null ? card.toReadAgain() : card.toReadAgainAfter(change);
  }

  /** Whether it is asked for because it no longer holds. */
  static boolean again(Context ctx) {
    return sentAll(ctx, AGAIN).contains("1");
  }

  static String change(Context ctx) {
    return sentAll(ctx, CHANGE).stream().findFirst().orElse(null);
  }

  private static List<String> sentAll(Context ctx, String name) {
    List<String> posted = ctx.formParams(name);
    return posted.isEmpty() ? ctx.queryParams(name) : posted;
  }

  /** What is asked for, told and sent on with the form. */
  static void ask(Asked a, Context ctx, Card card, List<Content.ToRead> toRead) {
    if (JackPlan.whole(toRead)) {
      return;
    }
    a.said((again(ctx) ? "To read again: " : "To read: ") + inShort(card, toRead) + ".");
    if (again(ctx)) {
      a.hidden(AGAIN, "1");
      if (change(ctx) != null) {
        a.hidden(CHANGE, change(ctx));
      }
    } else {
      hidden(a, toRead);
    }
  }

  static void hidden(Asked a, List<Content.ToRead> toRead) {
    if (JackPlan.whole(toRead)) {
      return;
    }
    toRead.forEach(t -> a.hidden(ToReadAddress.NEED, ToReadAddress.word(t)));
  }

  /** Each by name while they are few; by height when they are many. */
  static String inShort(Card card, List<Content.ToRead> toRead) {
    if (toRead.size() <= LISTED_ONE_BY_ONE) {
      return String.join("; ", toRead.stream().map(t -> words(card, t)).toList());
    }
    Map<String, Long> byHeight =
        toRead.stream()
            .collect(
                Collectors.groupingBy(
                    t -> t.name().words(), LinkedHashMap::new, Collectors.counting()));
    return toRead.size()
        + " in all: "
        + byHeight.entrySet().stream()
            .map(e -> e.getValue() + " at '" + e.getKey() + "'")
            .collect(Collectors.joining(", "));
  }

  static List<RoundView.PlanLine> lines(Sitting sitting) {
    Card card = sitting.card();
    List<RoundView.PlanLine> lines = new ArrayList<>();
    for (Content.ToRead toRead : sitting.round().toRead()) {
      Optional<SeenHeight> height =
          card.heightsOf(sitting.key()).stream()
              .filter(h -> h.name() == toRead.name() && h.asked() == toRead.pairing())
              .filter(SeenHeight::positionCounts)
              .findFirst();
      boolean done =
          toRead.quantity() == null
              ? height.isPresent()
              : card.readingsIn(sitting.key()).stream().anyMatch(r -> is(r, toRead) && r.counts());
      String href =
          height.isEmpty()
              ? newHeight(sitting, toRead)
              : HeightPages.address(height.get().key(), toRead.steering());
      lines.add(new RoundView.PlanLine(words(card, toRead), done, href));
    }
    return lines;
  }

  private static String newHeight(Sitting sitting, Content.ToRead toRead) {
    JackPlan.Stand axle =
        toRead.pairing() == null
            ? JackPlan.Stand.together(toRead.name())
            : JackPlan.Stand.crossed(toRead.name(), sitting.round());
    return sitting.axle()
        ? GuidePlan.newHeight(sitting, axle.name(), axle.pairing(), axle.otherEnd())
        : GuidePlan.newHeight(sitting, toRead.name(), null, null);
  }

  private static boolean is(SeenReading reading, Content.ToRead toRead) {
    return reading.height().name() == toRead.name()
        && reading.height().asked() == toRead.pairing()
        && reading.reading().steering() == toRead.steering()
        && (toRead.quantity() == Quantity.WATCH_POINT
            ? reading.of(toRead.point())
            : reading.of(toRead.quantity()));
  }

  static String words(Card card, Content.ToRead toRead) {
    String label = toRead.label() == null ? "" : ", " + toRead.label();
    String height =
        toRead.name().words()
            + label
            + (toRead.pairing() == null ? "" : ", " + toRead.pairing().words());
    if (toRead.quantity() == null) {
      return "the height '" + height + "'";
    }
    return card.what(toRead) + " at '" + height + "', " + toRead.steering().words();
  }
}
