package spindlebook.web;

import gg.jte.Content;
import gg.jte.generated.precompiled.StaticTemplates;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import spindlebook.drawing.DrawnWheel;
import spindlebook.drawing.FigureText;
import spindlebook.drawing.LengthScale;
import spindlebook.drawing.PlanView;
import spindlebook.drawing.State;
import spindlebook.drawing.TapeFace;
import spindlebook.page.Action;
import spindlebook.page.Choice;
import spindlebook.page.Field;
import spindlebook.page.Notice;
import spindlebook.page.PageFrame;
import spindlebook.page.Pick;
import spindlebook.page.ProblemPage;
import spindlebook.page.ReadingRow;
import spindlebook.page.SettingRow;
import spindlebook.page.StepBand;
import spindlebook.page.StoryEntry;

/** Pages that show every part, from invented numbers; run it, then look at target/specimen. */
final class Specimen {
  private static final StaticTemplates PARTS = new StaticTemplates();
  private static final double IN = 25.4;
  private static final java.util.List<String> SHEETS =
      java.util.List.of(
          "spindlebook.css", "book.css", "story.css", "car.css", "guide.css", "print.css");
  private static final String CAUTION =
      "Rated stands on level ground, wheels chocked, never on a jack alone. Hands out of the pinch"
          + " when an arm is let go. The figures are your measurements against your limits.";

  private Specimen() {}

  public static void main(String[] args) throws IOException {
    Path into = Files.createDirectories(Path.of("target", "specimen"));
    for (String sheet : SHEETS) {
      Files.copy(
          Path.of("static", sheet),
          into.resolve(sheet),
          java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    }
    for (Map.Entry<String, String> page : pages("").entrySet()) {
      String html = page.getValue();
      for (String sheet : SHEETS) {
        html = html.replace(StaticFiles.href(sheet), sheet);
      }
      Files.writeString(into.resolve(page.getKey() + ".html"), html);
    }
  }

  /** All that the stylesheets say. */
  static String css() throws IOException {
    StringBuilder all = new StringBuilder();
    for (String sheet : SHEETS) {
      all.append(Files.readString(Path.of("static", sheet)));
    }
    return all.toString();
  }

  /** Every page by name; what is passed in is added to every text a person could have typed. */
  static Map<String, String> pages(String typed) {
    Map<String, String> pages = new LinkedHashMap<>();
    pages.put("corner", corner(typed));
    pages.put("height", height(typed));
    pages.put("tape", tape(typed));
    pages.put("adjustment", adjustment(typed));
    pages.put("book", book(typed));
    pages.put("problem", problem(typed));
    return pages;
  }

  private static final TapeFace FACE =
      new TapeFace(
          "left-front",
          true,
          -9 * IN,
          7 * IN,
          400,
          92,
          LengthScale.INCH,
          List.of(
              new TapeFace.Band(-7 * IN, 5 * IN, TapeFace.Band.Kind.USABLE),
              new TapeFace.Band(-8 * IN, -7 * IN, TapeFace.Band.Kind.HELD_BACK),
              new TapeFace.Band(-8.5 * IN, -8 * IN, TapeFace.Band.Kind.PAST_A_LIMIT)));

  private static String page(PageFrame frame, Content... parts) {
    Content all =
        output -> {
          for (Content part : parts) {
            part.writeTo(output);
          }
        };
    return PARTS.webPage(frame.caution(CAUTION), all).render();
  }

  private static Content raw(String html) {
    return output -> output.writeContent(html);
  }

  private static String corner(String t) {
    PageFrame frame =
        PageFrame.of("Left front" + t, "Left front")
            .sub("as of today · spring out, wheel on")
            .up("Marmot", "/car")
            .plan(PlanView.at(DrawnWheel.LEFT_FRONT));
    List<SettingRow> settings =
        List.of(
            new SettingRow(
                "Limit strap" + t,
                FigureText.of("14 1/2", "in"),
                "9 Oct · was 15 1/8 in" + t,
                "/s/1"),
            new SettingRow("Bump-stop spacer", FigureText.of("3/8", "in"), "2 Sep", "/s/2"),
            new SettingRow("Upper rod end", FigureText.of("6 1/2", "turns out"), "2 Sep", "/s/3"),
            new SettingRow("Steering stop", null, "", "/s/4"));
    return page(
        frame,
        raw("<div class=\"side\"><div class=\"stack\"><p class=\"big\">"),
        PARTS.webFigure(FigureText.of("11 1/8", "in usable").within("1/16")),
        raw("</p><p><strong>as it could be</strong> · 14 1/2 in as set (strap to stop)</p>"),
        raw("<svg viewBox=\"0 0 92 400\" width=\"92\" class=\"face\" aria-hidden=\"true\">"),
        PARTS.webFace(FACE),
        raw("</svg>"),
        raw("</div><div class=\"stack\">"),
        raw("</div></div>"),
        PARTS.webSettings("Settings in force" + t, settings),
        PARTS.webStatekey(List.of(State.values())),
        PARTS.webActions(
            List.of(
                Action.link("Measure", "/measure", true),
                Action.link("Change a setting", "/setting", false))));
  }

  private static StepBand band(String t) {
    return new StepBand(
        PlanView.at(DrawnWheel.LEFT_FRONT),
        "Left front",
        "Full droop" + t,
        1,
        "full-right",
        "full right",
        7,
        31);
  }

  private static Pick[] words(String name) {
    return new Pick[] {
      new Pick(name, "well clear", "well clear"),
      new Pick(name, "touches", "touches"),
      new Pick(name, "binds", "binds"),
      new Pick(name, "not looked", "not looked")
    };
  }

  private static String height(String t) {
    PageFrame frame =
        PageFrame.of("Readings", "Readings")
            .step(band(t))
            .up("round" + t, "/round")
            .notices(
                List.of(
                    new Notice(
                        Notice.Kind.BOOK,
                        "In the book: left front · full droop · 8 1/4 in · 209.6 mm" + t)));
    ReadingRow tieRod =
        new ReadingRow(
            Field.of("gap-1", "Gap: tie rod to upper arm" + t)
                .typed("81/4" + t)
                .problem("81/4 could be 8 1/4 or 20 1/4: write 8 1/4 with a space." + t)
                .unit("in")
                .picks(words("word-1")),
            "keep at least 1/4 in" + t,
            "last time 3/16 in · 9 Oct, before the strap" + t,
            null);
    ReadingRow rodEnd =
        new ReadingRow(
            Field.of("gap-2", "Gap: rod end to its housing")
                .typed("1/8")
                .unit("in")
                .picks(words("word-2")),
            "keep at least 1/16 in",
            "last time 1/8 in",
            State.LIVE);
    ReadingRow strap =
        new ReadingRow(
            Field.of("strap", "Strap length").hint("mount to mount, pulled tight" + t).unit("in"),
            "",
            "last time 14 1/2 in",
            State.STALE);
    return page(
        frame,
        raw("<form method=\"post\" class=\"stack\">"),
        PARTS.webEnter(),
        PARTS.webReading(tieRod, "Save"),
        PARTS.webReading(rodEnd, "Save"),
        PARTS.webReading(strap, "Save"),
        PARTS.webActions(
            List.of(
                Action.submit("Into the book" + t), Action.link("Next height", "/next", false))),
        raw("</form>"));
  }

  private static String tape(String t) {
    PageFrame frame =
        PageFrame.of("Spindle above the floor", "").step(band(t)).up("round", "/round");
    return page(
        frame,
        raw(
            "<form method=\"post\" class=\"stack\"><h2>Spindle above the floor</h2><p"
                + " class=\"big\">"),
        PARTS.webFigure(FigureText.of("11", "in and …")),
        raw("</p><p class=\"hint\">last time 11 7/8 in · right side 11 3/4 in</p>"),
        raw("</form>"));
  }

  private static String adjustment(String t) {
    PageFrame frame =
        PageFrame.of("Change a setting", "Change a setting")
            .sub("left front · limit strap" + t)
            .up("Left front", "/corner")
            .plan(PlanView.at(DrawnWheel.LEFT_FRONT));
    Choice which =
        new Choice(
            "why" + t.length(),
            "Why" + t,
            "It goes into the book with the change." + t,
            "Choose why it was changed." + t,
            List.of(
                new Choice.Option("gap", "A gap was short" + t, "tie rod to upper arm" + t, true),
                new Choice.Option("wear", "The strap stretched", "", false),
                new Choice.Option("part", "A part was changed", "", false)));
    return page(
        frame,
        raw("<form method=\"post\" class=\"stack\"><dl class=\"facts\"><dt>Set to</dt><dd>"),
        PARTS.webFigure(FigureText.of("15 1/8", "in")),
        raw("</dd><dt>Holes left</dt><dd>3, each "),
        PARTS.webFigure(FigureText.of("5/8", "in")),
        raw("</dd><dt>At the wheel</dt><dd>"),
        PARTS.webFigure(FigureText.of("−1 1/16", "in").within("1/8")),
        raw("</dd></dl>"),
        PARTS.webField(
            Field.of("to", "New strap length" + t)
                .hint("8 1/4, 8-1/4, 8.25 or 210 mm" + t)
                .unit("in")
                .inputmode("text")
                .focused()),
        PARTS.webField(
            Field.of("who", "Who")
                .typed(t)
                .problem("Write who changed it, a first name will do." + t)),
        PARTS.webChoice(which),
        PARTS.webActions(
            List.of(Action.submit("Into the book"), Action.link("Leave it", "/corner", false))),
        raw("</form>"));
  }

  private static String book(String t) {
    PageFrame frame =
        PageFrame.of("The book", "The book").sub("Marmot · 1,204 entries").up("Marmot", "/car");
    return page(
        frame,
        story(
            new StoryEntry(
                1204,
                "12 Oct, 18:40" + t,
                "Jo" + t,
                "adjustment",
                "Limit strap, left front: 15 1/8 in to 14 1/2 in. A gap was short." + t,
                List.of("Makes 2 readings stale: strap length, height on the strap." + t),
                null,
                "/e/1204"),
            new StoryEntry(
                1203,
                "12 Oct, 18:22",
                "Jo",
                "reading",
                "Left front, full droop, full right: tie rod to upper arm 1/8 in.",
                List.of(),
                State.SHORT,
                "/e/1203"),
            new StoryEntry(
                1202,
                "12 Oct, 18:20",
                "Sam",
                "reading",
                "Left front, full bump, full right: tyre to frame 3 1/16 in.",
                List.of("Far off the last one, 1 1/8 in, with nothing changed since."),
                State.IN_DOUBT,
                "/e/1202"),
            new StoryEntry(
                1201, "9 Oct", "Sam", "driven", "2.1 h, hill climb.", List.of(), null, null),
            new StoryEntry(
                1200,
                "8 Oct",
                "Jo",
                "adjustment",
                "Bump-stop spacer, right rear: back to 3/8 in.",
                List.of("4 readings put back, not confirmed."),
                State.PUT_BACK,
                "/e/1200")));
  }

  private static Content story(StoryEntry... entries) {
    return output -> {
      output.writeContent("<ol class=\"rows story\">");
      for (StoryEntry entry : entries) {
        output.writeContent("<li><a href=\"/e\">");
        PARTS.webStory(entry).writeTo(output);
        output.writeContent("</a></li>");
      }
      output.writeContent("</ol>");
    };
  }

  private static String problem(String t) {
    return page(
        PageFrame.of("Not found", "Spindlebook"),
        PARTS.webProblem(
            new ProblemPage(
                404,
                "There is no such page in the book." + t,
                "Go back to the cars and choose the corner from there." + t)));
  }
}
