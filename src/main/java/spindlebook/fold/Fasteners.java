package spindlebook.fold;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Retired;
import spindlebook.definition.Setting;
import spindlebook.entry.Content;

/**
 * Folds a car's entries into its fasteners. A change of an adjuster with a thread opens its
 * fastener, and it stays open until somebody who knew of that change says that it is tight and
 * marked. A change that was taken back, or answered not to count, opens nothing; one in doubt does.
 * Used once and thrown away.
 */
final class Fasteners {
  private record Name(String corner, String adjuster) {}

  private static final class Line {
    Adjuster adjuster;
    String torque;
    Setting setting;
    Noted opened;
    Noted said;
    Content.Fastener saying;

    Line(Adjuster adjuster) {
      this.adjuster = adjuster;
      this.setting = adjuster.first();
    }

    SeenFastener.State state() {
      if (said == null) {
        return opened == null ? SeenFastener.State.NOT_SAID : SeenFastener.State.OPENED;
      }
      if (Boolean.FALSE.equals(saying.tight())) {
        return SeenFastener.State.LOOSE;
      }
      // Said from a phone that had not heard of the change: it may have been tight before it.
      if (opened != null && said.after() < opened.n()) {
        return SeenFastener.State.OPENED;
      }
      return Boolean.TRUE.equals(saying.marked())
          ? SeenFastener.State.MARKED
          : SeenFastener.State.NOT_MARKED;
    }
  }

  private final CarBook book;
  private final Map<Name, Line> lines = new LinkedHashMap<>();

  Fasteners(CarBook book) {
    this.book = book;
  }

  List<SeenFastener> fold() {
    for (Noted entry : book.entries()) {
      book.standing(entry.key()).ifPresent(content -> take(entry, content));
    }
    List<SeenFastener> seen = new ArrayList<>();
    for (String corner : book.corners()) {
      lines.forEach(
          (name, line) -> {
            if (name.corner().equals(corner) && line.adjuster.kind().threaded()) {
              seen.add(
                  new SeenFastener(
                      corner, line.adjuster, line.torque, line.opened, line.said, line.state()));
            }
          });
    }
    return List.copyOf(seen);
  }

  private void take(Noted entry, Content content) {
    if (content instanceof Content.Corner corner) {
      corner.adjusters().forEach(a -> add(entry.key(), a));
    } else if (content instanceof Content.Definition d && d.corner() != null) {
      if (d.what() instanceof Adjuster adjuster) {
        add(d.corner(), adjuster);
      } else if (d.what() instanceof Retired retired) {
        lines.remove(new Name(d.corner(), retired.adjuster()));
      }
    } else if (content instanceof Content.Adjustment a) {
      adjust(new Written<>(entry, a));
    } else if (content instanceof Content.Fastener f) {
      say(entry, f);
    }
  }

  private void add(String corner, Adjuster adjuster) {
    Line line =
        lines.computeIfAbsent(new Name(corner, adjuster.adjuster()), n -> new Line(adjuster));
    line.adjuster = adjuster;
  }

  private void adjust(Written<Content.Adjustment> adjustment) {
    Content.Adjustment a = adjustment.content();
    Line line = lines.get(new Name(a.corner(), a.adjuster()));
    if (line == null || book.refused(adjustment)) {
      return;
    }
    Setting before = line.setting == null ? a.from() : line.setting;
    boolean turned = a.to().amount() == null || !a.to().same(before);
    if (turned) {
      line.opened = adjustment.entry();
    }
    line.setting = a.to();
  }

  private void say(Noted entry, Content.Fastener f) {
    Line line = lines.get(new Name(f.corner(), f.adjuster()));
    if (line == null) {
      return;
    }
    line.torque =
        Objects.requireNonNullElse(f.torque(), Objects.requireNonNullElse(line.torque, ""));
    line.torque = line.torque.isBlank() ? null : line.torque;
    if (f.tight() != null) {
      line.said = entry;
      line.saying = f;
    }
  }
}
