package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.IntoBook;
import spindlebook.definition.Retired;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.definition.ToolUse;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.log.Histories;
import spindlebook.page.Asked;
import spindlebook.page.FormKey;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;

/** The tools beside a car, and how far each can be trusted. */
public record ToolPages(Histories histories, IntoBook book) {
  private static final String DIVISION = "Its smallest division";
  private static final String PLACING = "Error of holding it to the mark, ±";
  private static final String NO_ANGLE =
      "An angle finder needs its smallest division, such as 0.1.";

  public void list(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    PageFrame frame = frame(history, "Tools", "/cars/" + car);
    List<WatchPointPages.Line> lines =
        tools(history).stream()
            .map(
                t ->
                    new WatchPointPages.Line(
                        t.name(),
                        "for " + t.use().words() + ", to " + graduation(t),
                        "",
                        "/cars/" + car + "/tools/" + t.tool()))
            .toList();
    Html.show(ctx, Html.TEMPLATES.watchList(frame, lines, "/cars/" + car + "/tools/new", null));
  }

  private static String graduation(Tool t) {
    return t.graduation() != null ? t.graduation().typed() : t.graduationAngle().typed();
  }

  private List<Tool> tools(CarBook history) {
    return history.corners().stream()
        .findFirst()
        .map(c -> history.card(c).tools())
        .orElse(Starter.tools());
  }

  /** One tool, or a new one, and how far it can be trusted. */
  public void tool(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    Tool now = named(ctx, history);
    Asked a = Asked.of(ctx, history.details().orElseThrow().unit(), history.n());
    Tool tool = ask(a, now);
    String car = history.car().orElseThrow();
    String tools = "/cars/" + car + "/tools";
    if (a.ok()) {
      book.put(ctx, a, Content.Definition.of(car, tool), tools);
      return;
    }
    PageFrame frame = frame(history, now == null ? "A new tool" : now.name(), tools);
    String address = tools + "/" + (now == null ? "new" : now.tool());
    if (now == null) {
      a.show(ctx, frame, address, "Save", tools);
      return;
    }
    a.show(
        ctx,
        Html.TEMPLATES.watchPoint(
            a.page(frame, address, "Save", tools),
            FormKey.fresh(history.n()),
            address + "/retire",
            List.of(),
            null));
  }

  /**
   * @param now null for a new tool
   * @return null as long as it is not told without a fault
   */
  private static Tool ask(Asked a, Tool now) {
    Optional<Tool> was = Optional.ofNullable(now);
    String name =
        a.line("name", "Called", 60)
            .was(was.map(Tool::name).orElse(null))
            .needed("A tool needs a name.");
    ToolUse use =
        now != null
            ? now.use()
            : a.one("use", "It reads", ToolUse.class, ToolUse::words).needed("Say what it reads.");
    boolean angles = use == ToolUse.ANGLES;
    TypedAngle graduationAngle = null;
    TypedLength graduation = null;
    if (angles) {
      graduationAngle =
          graduation(a.angle("graduation", DIVISION), was.map(Tool::graduationAngle))
              .check(g -> g.rad() > 0, NO_ANGLE)
              .needed(NO_ANGLE);
    } else {
      graduation =
          graduation(a.length("graduation", DIVISION), was.map(Tool::graduation))
              .check(g -> g.mm() > 0, "A division of nothing reads nothing; type one such as 1/16.")
              .needed("A tool needs its smallest division, such as 1/16.");
    }
    TypedLength shared =
        a.length("shared", "Error shared by all it reads, ±")
            .hint("Its hook, its class. Lengths only; empty: none.")
            .unit("")
            .was(was.map(Tool::classHalfWidth).orElse(null))
            .check(l -> !angles, "A shared error is kept for lengths only; leave it empty here.")
            .read();
    TypedAngle placingAngle =
        angles ? placing(a.angle("placing", PLACING), was.map(Tool::placingHalfWidthAngle)) : null;
    TypedLength placing =
        angles ? null : placing(a.length("placing", PLACING), was.map(Tool::placingHalfWidth));
    TypedLength largest =
        now != null && use != ToolUse.GAPS
            ? null
            : a.length("largest", "Thickest shank of the set")
                .hint("Gaps that wide and wider get the tape. Empty: 1/2 in.")
                .unit("")
                .was(was.map(Tool::largest).orElse(null))
                .check(
                    l -> angles || use == ToolUse.GAPS,
                    "Only a set of shanks has a thickest; leave it empty here.")
                .read();
    if (!a.ok()) {
      return null;
    }
    String tool = now != null ? now.tool() : shortName(name);
    return angles
        ? new Tool(tool, name, use, null, graduationAngle, null, null, placingAngle)
        : new Tool(tool, name, use, graduation, null, shared, placing, null, largest);
  }

  private static <T> Asked.Box<T> graduation(Asked.Box<T> box, Optional<T> was) {
    return box.hint("1/16 in, 1 mm; for angles 0.1. It counts from now on.")
        .unit("")
        .was(was.orElse(null));
  }

  private static <T> T placing(Asked.Box<T> box, Optional<T> was) {
    return box.hint("New at each reading. Empty: none.").unit("").was(was.orElse(null)).read();
  }

  private static String shortName(String name) {
    return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-")
        + "-"
        + FormKey.fresh(0).key().substring(0, 4);
  }

  public void retire(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    Asked a = Asked.of(ctx, history.details().orElseThrow().unit(), history.n());
    Supplier<Tool> tool =
        () -> Optional.ofNullable(named(ctx, history)).orElseThrow(NotFoundResponse::new);
    Supplier<Retired> retired = () -> new Retired(null, null, tool.get().tool());
    book.once(ctx, a, () -> Content.Definition.of(car, retired.get()), "/cars/" + car + "/tools");
  }

  /** The tool of the address; null for a new one. */
  private Tool named(Context ctx, CarBook history) {
    String name = ctx.pathParam("tool");
    return name.equals("new")
        ? null
        : tools(history).stream()
            .filter(t -> t.tool().equals(name))
            .findFirst()
            .orElseThrow(NotFoundResponse::new);
  }

  private static PageFrame frame(CarBook history, String heading, String back) {
    return CornerBar.under(history, heading, Capital.of(heading))
        .sub(history.details().orElseThrow().name())
        .up("back", back);
  }
}
