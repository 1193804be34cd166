package spindlebook.fastener;

import java.util.List;
import spindlebook.corner.Content;
import spindlebook.corner.SeenFastener;
import spindlebook.web.Choice;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;

/** How a fastener is, and the torque figure its owner keeps it to. */
sealed interface FastenerForm {
  record Accepted(Content.Fastener fastener) implements FastenerForm {}

  record Problems() implements FastenerForm {}

  static FastenerForm read(Posted posted, SeenFastener seen) {
    Boolean tight =
        switch (posted.text("how")) {
          case "marked", "not-marked" -> true;
          case "loose" -> false;
          default -> null;
        };
    Boolean marked = tight == null || !tight ? null : posted.text("how").equals("marked");
    String torque = torque(posted, seen);
    String words = posted.line("words", 200);
    if (tight == null && torque == null) {
      posted.wrong("how", "Say how it is: tight and marked, tight, or loose.");
    }
    return posted.ok()
        ? new Accepted(
            new Content.Fastener(
                seen.corner(), seen.adjuster().adjuster(), torque, tight, marked, words))
        : new Problems();
  }

  /** Null where the form does not ask for it, or it is what stands already. */
  private static String torque(Posted posted, SeenFastener seen) {
    if (!posted.has("torque-asked")) {
      return null;
    }
    String typed = posted.line("torque", 60);
    String before = seen.torque() == null ? "" : seen.torque();
    String now = typed == null ? "" : typed;
    return now.equals(before) ? null : now;
  }

  static List<FormPart> parts(Posted posted) {
    String how = posted.text("how");
    return List.of(
        new FormPart.Chosen(
            new Choice(
                "how",
                "How is it?",
                "",
                posted.problem("how"),
                List.of(
                    new Choice.Option(
                        "marked",
                        "tight and marked",
                        "a line across nut and part",
                        how.equals("marked")),
                    new Choice.Option(
                        "not-marked", "tight, not marked", "", how.equals("not-marked")),
                    new Choice.Option("loose", "found loose", "", how.equals("loose"))))),
        new FormPart.Hidden("torque-asked", "yes"),
        new FormPart.Typed(
            posted.fill(
                Field.of("torque", "Torque figure, if you have one")
                    .hint("In your words: 65 ft-lb, 90 Nm dry. The part maker's figure wins."))),
        new FormPart.Typed(
            posted.fill(Field.of("words", "In your words").hint("May be left empty."))));
  }
}
