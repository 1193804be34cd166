package spindlebook.watch;

import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import spindlebook.corner.CarBook;
import spindlebook.corner.Card;
import spindlebook.corner.Starter;
import spindlebook.corner.Tool;
import spindlebook.corner.ToolUse;
import spindlebook.log.Histories;
import spindlebook.units.LengthUnit;
import spindlebook.units.TypedAngle;
import spindlebook.units.TypedLength;
import spindlebook.web.Choice;
import spindlebook.web.Crumb;
import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.FormPage;
import spindlebook.web.FormPart;
import spindlebook.web.Html;
import spindlebook.web.PageFrame;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** The tools beside a car, and how far each can be trusted. */
public final class ToolPages {
  private final Histories histories;
  private final DefinitionStore store;

  public ToolPages(Histories histories, DefinitionStore store) {
    this.histories = histories;
    this.store = store;
  }

  public void list(Context ctx) {
    CarBook history = history(ctx);
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
        .map(c -> histories.card(history.car().orElseThrow(), c))
        .map(Card::tools)
        .orElse(Starter.tools());
  }

  public void tool(Context ctx) {
    CarBook history = history(ctx);
    Tool tool = named(ctx, history);
    Map<String, List<String>> typed = new HashMap<>();
    if (tool != null) {
      typed.put("name", List.of(tool.name()));
      typed.put("use", List.of(Posted.word(tool.use())));
      typed.put("graduation", List.of(graduation(tool)));
      put(typed, "shared", tool.classHalfWidth());
      put(typed, "placing", tool.placingHalfWidth());
      put(typed, "largest", tool.largest());
      if (tool.placingHalfWidthAngle() != null) {
        typed.put("placing", List.of(tool.placingHalfWidthAngle().typed()));
      }
    }
    show(ctx, history, tool, new Posted(typed), FormKey.fresh(history.n()));
  }

  private static void put(Map<String, List<String>> typed, String name, TypedLength length) {
    if (length != null) {
      typed.put(name, List.of(length.typed()));
    }
  }

  private static void show(Context ctx, CarBook history, Tool tool, Posted posted, FormKey key) {
    String car = history.car().orElseThrow();
    List<FormPart> parts = new ArrayList<>();
    parts.add(new FormPart.Typed(posted.fill(Field.of("name", "Called"))));
    if (tool == null) {
      List<Choice.Option> uses = new ArrayList<>();
      for (ToolUse use : ToolUse.values()) {
        uses.add(
            new Choice.Option(
                Posted.word(use), use.words(), "", Posted.word(use).equals(posted.text("use"))));
      }
      parts.add(
          new FormPart.Chosen(new Choice("use", "It reads", "", posted.problem("use"), uses)));
    }
    parts.add(
        new FormPart.Typed(
            posted.fill(
                Field.of("graduation", "Its smallest division")
                    .hint("1/16 in, 1 mm; for angles 0.1. It counts from now on."))));
    parts.add(
        new FormPart.Typed(
            posted.fill(
                Field.of("shared", "Error shared by all it reads, ±")
                    .hint("Its hook, its class. Lengths only; empty: none."))));
    parts.add(
        new FormPart.Typed(
            posted.fill(
                Field.of("placing", "Error of holding it to the mark, ±")
                    .hint("New at each reading. Empty: none."))));
    if (tool == null || tool.use() == ToolUse.GAPS) {
      parts.add(
          new FormPart.Typed(
              posted.fill(
                  Field.of("largest", "Thickest shank of the set")
                      .hint("Wider gaps are read with the tape. Empty: 1/2 in."))));
    }
    FormPage page =
        new FormPage(
            frame(history, tool == null ? "A new tool" : tool.name(), "/cars/" + car + "/tools"),
            "/cars/" + car + "/tools/" + (tool == null ? "new" : tool.tool()),
            key,
            parts,
            "Keep this",
            "/cars/" + car + "/tools");
    if (tool != null) {
      Html.show(
          ctx.status(posted.ok() ? 200 : 422),
          Html.TEMPLATES.watchPoint(
              page,
              FormKey.fresh(history.n()),
              "/cars/" + car + "/tools/" + tool.tool() + "/retire",
              List.of(),
              null));
    } else {
      Html.form(ctx, posted, page);
    }
  }

  public void retire(Context ctx) {
    CarBook history = history(ctx);
    Tool tool = named(ctx, history);
    if (tool == null) {
      throw new NotFoundResponse();
    }
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    String car = history.car().orElseThrow();
    store.retireTool(car, tool.tool(), key, Who.of(ctx));
    Html.next(ctx, "/cars/" + car + "/tools");
  }

  public void change(Context ctx) {
    CarBook history = history(ctx);
    Tool before = named(ctx, history);
    Posted posted = Html.posted(ctx);
    FormKey key = posted.formKey().orElseGet(() -> FormKey.fresh(history.n()));
    LengthUnit unit = history.details().orElseThrow().unit();
    String name = posted.neededLine("name", 60, "A tool needs a name.");
    ToolUse use = before != null ? before.use() : posted.word("use", ToolUse.class, null);
    if (use == null) {
      posted.wrong("use", "Say what it reads.");
    }
    Tool tool = use == null || name == null ? null : read(posted, before, name, use, unit);
    if (tool == null || !posted.ok()) {
      show(ctx, history, before, posted, key);
      return;
    }
    store.tool(history.car().orElseThrow(), tool, key, Who.of(ctx));
    Html.next(ctx, "/cars/" + history.car().orElseThrow() + "/tools");
  }

  private static Tool read(Posted posted, Tool before, String name, ToolUse use, LengthUnit unit) {
    String tool =
        before != null
            ? before.tool()
            : name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-")
                + "-"
                + FormKey.fresh(0).key().substring(0, 4);
    if (use == ToolUse.ANGLES) {
      TypedAngle graduation = posted.angle("graduation");
      TypedAngle placing = posted.angle("placing");
      if (posted.has("shared")) {
        posted.wrong("shared", "A shared error is kept for lengths only; leave it empty here.");
      }
      if (posted.ok() && (graduation == null || graduation.rad() <= 0)) {
        posted.wrong("graduation", "An angle finder needs its smallest division, such as 0.1.");
      }
      return posted.ok() ? new Tool(tool, name, use, null, graduation, null, null, placing) : null;
    }
    TypedLength graduation =
        posted.neededLength(
            "graduation", unit, "A tool needs its smallest division, such as 1/16.");
    if (graduation != null && graduation.mm() == 0) {
      posted.wrong("graduation", "A division of nothing reads nothing; type one such as 1/16.");
    }
    TypedLength shared = posted.lengthFromZero("shared", unit);
    TypedLength placing = posted.lengthFromZero("placing", unit);
    TypedLength largest = posted.lengthFromZero("largest", unit);
    if (largest != null && use != ToolUse.GAPS) {
      posted.wrong("largest", "Only a set of shanks has a thickest; leave it empty here.");
    }
    return posted.ok()
        ? new Tool(tool, name, use, graduation, null, shared, placing, null, largest)
        : null;
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
    return PageFrame.of(heading + " · Spindlebook", spindlebook.card.Capital.of(heading))
        .sub(history.details().orElseThrow().name())
        .crumbs(new Crumb("back", back));
  }

  private CarBook history(Context ctx) {
    CarBook history = histories.of(ctx.pathParam("car"));
    if (history.car().isEmpty()) {
      throw new NotFoundResponse();
    }
    return history;
  }
}
