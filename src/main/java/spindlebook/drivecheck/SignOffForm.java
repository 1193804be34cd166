package spindlebook.drivecheck;

import java.util.List;
import spindlebook.card.Counted;
import spindlebook.web.Field;
import spindlebook.web.FormPart;
import spindlebook.web.Posted;
import spindlebook.web.Who;

/** Who signs, and why all the same when something is open. */
sealed interface SignOffForm {
  int LONGEST_WHY = 500;

  record Accepted(String why, String who) implements SignOffForm {}

  record Problems() implements SignOffForm {}

  static SignOffForm read(Posted posted, int open) {
    String who = posted.neededLine("who", Who.LONGEST, "Say who signs.");
    String why =
        open == 0
            ? posted.line("why", LONGEST_WHY)
            : posted.neededLine(
                "why",
                LONGEST_WHY,
                "Say in a sentence why it is signed with " + Counted.of(open, "thing") + " open.");
    return posted.ok() ? new Accepted(why, who) : new Problems();
  }

  /** Which position of the book was looked at; 0 when that was tampered with. */
  static long shownN(Posted posted) {
    try {
      return Long.parseLong(posted.text("n").strip());
    } catch (NumberFormatException e) {
      return 0;
    }
  }

  static List<FormPart> parts(Posted posted, int open, long n, String who) {
    Field name = posted.fill(Field.of("who", "Signed by"));
    return List.of(
        new FormPart.Typed(posted.has("n") ? name : name.typed(who)),
        new FormPart.Typed(
            posted.fill(
                Field.of("why", open == 0 ? "In your words" : "Why it is signed all the same")
                    .hint(
                        open == 0
                            ? "May be left empty."
                            : "One sentence. It is kept with what is open."))),
        new FormPart.Hidden("n", Long.toString(n)));
  }
}
