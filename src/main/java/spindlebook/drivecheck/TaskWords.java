package spindlebook.drivecheck;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.card.Capital;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.drawing.State;
import spindlebook.entry.Content.ToRead;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenFastener;
import spindlebook.travel.EndFindings;
import spindlebook.travel.EndLimit;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;

/** What a drive check found, as jobs: the verb first, in the words of the garage. Used once. */
final class TaskWords {
  private static final int MOST_NAMED = 2;
  private static final String BACK = "drive-check";

  private final CarBook book;
  private final Map<String, DriveCheck.Checked> corners = new LinkedHashMap<>();
  private final Set<String> curesTold = new HashSet<>();

  TaskWords(CarBook book, DriveCheck check) {
    this.book = book;
    check.corners().forEach(c -> corners.put(c.card().corner(), c));
  }

  Task of(CheckWords.Line line) {
    ThingFirst thing = line.thing();
    DriveCheck.Checked at = corners.get(thing.corner());
    if (thing instanceof ThingFirst.ToDo toDo) {
      String[] words = Capital.of(toDo.toDo().toDo().words()).split(" ", 2);
      return new Task(
          null,
          words[0],
          words.length > 1 ? words[1] : "",
          line.href(),
          "/to-do/" + toDo.toDo().key() + "/done",
          Map.of("done", "true", "back", BACK));
    }
    if (thing instanceof ThingFirst.Opened opened) {
      SeenFastener seen = opened.fastener();
      String torque = seen.torque() == null ? "" : ", " + seen.torque();
      return new Task(
          null,
          "Torque",
          fastener(seen) + torque,
          line.href(),
          line.href(),
          Map.of("how", "marked", "back", BACK));
    }
    return at == null
        ? job(line, "Add", "its corners")
        : ofCorner(line, thing, at, new TravelWords(at.card(), at.travel()));
  }

  /** "strap bolts"; with what it holds where the word alone does not say. */
  private static String fastener(SeenFastener seen) {
    String fastener = seen.adjuster().kind().fastener();
    String name = seen.adjuster().name();
    String first = fastener.split(" ", 2)[0].replace('-', ' ');
    return name.contains(first) ? fastener : name + ", " + fastener;
  }

  private static Task job(CheckWords.Line line, String verb, String what) {
    State state = Shown.state(line.thing().why());
    return new Task(state, verb, what, line.href(), null, Map.of());
  }

  private Task ofCorner(
      CheckWords.Line line, ThingFirst thing, DriveCheck.Checked at, TravelWords say) {
    Card card = at.card();
    if (thing instanceof ThingFirst.OfLimit of) {
      return limit(line, of, at, say);
    }
    if (thing instanceof ThingFirst.NotReadFarEnough far) {
      return job(
          line,
          "Measure",
          far.reach().limits().size()
              + " limits "
              + say.outTo(far.reach().outToMm()).replace(" " + say.zero().words(), ""));
    }
    if (thing instanceof ThingFirst.OfMidTravel of) {
      boolean broken = of.why() == Why.SHORT;
      return job(line, broken ? "Make room" : "Measure", say.name(of.mid()) + ", in mid-travel");
    }
    if (thing instanceof ThingFirst.OffTarget off) {
      String figure = off.target().target().figure().words();
      return job(
          line,
          switch (off.why()) {
            case SHORT -> "Set";
            case STALE, NOT_CONFIRMED -> "Measure again";
            default -> "Measure";
          },
          figure + ", target " + off.target().target().inWords());
    }
    if (thing instanceof ThingFirst.StopsDisagree) {
      return job(line, "Measure again", "full bump: read and worked out disagree");
    }
    if (thing instanceof ThingFirst.Missing missing) {
      boolean read = missing.needs().stream().anyMatch(n -> n.toRead() != null);
      return job(
          line,
          read ? "Measure" : "Give",
          read
              ? places(missing.needs().stream().map(Need::toRead).toList(), card)
              : say.needs(missing.needs().stream().map(Need::bare).toList()));
    }
    if (thing instanceof ThingFirst.Again again) {
      return job(
          line,
          again.why() == Why.STALE ? "Measure again" : "Set back, check",
          places(again.again().stream().map(a -> a.toRead()).toList(), card));
    }
    if (thing instanceof ThingFirst.InDoubt in) {
      return job(line, "Check this:", in.doubted().kind() + ", " + in.doubted().words());
    }
    if (thing instanceof ThingFirst.NotMeasured) {
      return job(line, "Measure", card.place().words() + ", nothing read yet");
    }
    if (thing instanceof ThingFirst.ReCheckDue due) {
      return job(line, "Look at", CheckWords.due(due));
    }
    if (thing instanceof ThingFirst.StretchUsed used) {
      return used.between() == null
          ? job(line, "Replace", "limit strap, its stretch is used up")
          : job(line, "Measure", "limit strap, longer than its stretch allows");
    }
    return job(line, "Make room:", line.words());
  }

  /** The stop's change once an end; what else is too close there goes by it. */
  private Task limit(
      CheckWords.Line line, ThingFirst.OfLimit of, DriveCheck.Checked at, TravelWords say) {
    EndFindings end = at.travel().at(of.end());
    Limit limit = of.limit();
    boolean toStop = line.href().contains("/adjustments/");
    String cure = say.cureKey(end);
    if (toStop && !cure.isEmpty() && curesTold.add(of.corner() + of.end())) {
      String to = say.cureTo(end);
      return job(line, cure, to.isEmpty() ? "for " + say.name(limit) : to);
    }
    String name = say.name(limit);
    if (of.why() == Why.CANT_TELL) {
      return job(line, toStop ? "Same for" : "Measure", name);
    }
    return limit.at() instanceof EndLimit.BrokenThroughout || !toStop
        ? job(line, "Make room", name)
        : job(line, "Same for", name);
  }

  /** "tyre to frame and upper rod end, 12": what is read, by its places, and how much of it. */
  private static String places(List<ToRead> toRead, Card card) {
    List<String> names =
        toRead.stream()
            .flatMap(t -> Stream.ofNullable(t))
            .map(
                t ->
                    t.point() != null
                        ? card.watchPoint(t.point()).map(p -> p.name()).orElse(t.point())
                        : t.quantity() == null ? t.name().words() : t.quantity().words())
            .distinct()
            .toList();
    String first = names.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
    String all = names.size() > MOST_NAMED ? first + " …" : first;
    return toRead.size() == 1 ? all : all + ", " + toRead.size() + " places";
  }
}
