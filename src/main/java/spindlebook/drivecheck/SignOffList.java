package spindlebook.drivecheck;

import java.util.ArrayList;
import java.util.List;
import spindlebook.card.Counted;
import spindlebook.card.Days;
import spindlebook.corner.CarBook;
import spindlebook.corner.SeenSignOff;

/** The sign-offs of a car, newest first. */
public record SignOffList(List<Line> lines) {

  /** One sign-off. */
  public record Line(String words, String detail, String href, String sinceHref) {}

  public SignOffList {
    lines = List.copyOf(lines);
  }

  static SignOffList of(CarBook history) {
    List<Line> lines = new ArrayList<>();
    for (SeenSignOff s : history.signOffs()) {
      String back = s.takenBack() ? "taken back · " : "";
      lines.add(
          0,
          new Line(
              Days.minute(s.at()) + " · " + s.who(),
              back
                  + "as of entry "
                  + s.signOff().n()
                  + " · "
                  + outcome(s.signOff().open().size())
                  + " · "
                  + Counted.of(s.since(history).size(), "entry", "entries")
                  + " since",
              "/sign-offs/" + s.key(),
              "/sign-offs/" + s.key() + "/since"));
    }
    return new SignOffList(lines);
  }

  static String outcome(int open) {
    return open == 0 ? "met the rules" : Counted.of(open, "thing") + " open";
  }
}
