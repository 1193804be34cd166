package spindlebook.figures;

import java.util.Optional;
import spindlebook.advice.DeepestBump;
import spindlebook.advice.DriveCheck;
import spindlebook.drivecheck.CheckWords;
import spindlebook.drivecheck.SignOffCopy;
import spindlebook.drivecheck.Task;
import spindlebook.entry.Content;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenFastener;
import spindlebook.fold.SeenSignOff;
import spindlebook.fold.SeenToDo;
import spindlebook.fold.SeenUse;
import spindlebook.fold.Written;
import spindlebook.log.Bodies;
import spindlebook.words.EntryWords;

/** The drive check, sign-offs, and what drives and hands did, as JSON. */
final class LifeFigures {
  private LifeFigures() {}

  static void corner(Node corner, CarBook book, DriveCheck.Checked at) {
    String key = at.card().corner();
    EntryWords words = new EntryWords(book);
    corner.put(
        "telltales",
        book.telltales().stream()
            .filter(t -> t.content().corner().equals(key))
            .map(t -> telltale(t, at, words))
            .toList());
    corner.put(
        "fasteners",
        book.fasteners().stream()
            .filter(f -> f.corner().equals(key))
            .map(LifeFigures::fastener)
            .toList());
  }

  private static Node fastener(SeenFastener seen) {
    return new Node()
        .put("adjuster", seen.adjuster().adjuster())
        .put("state", seen.state())
        .put("open", seen.open())
        .said("torque", seen.torque());
  }

  private static Node telltale(
      Written<Content.Telltale> seen, DriveCheck.Checked at, EntryWords words) {
    boolean ring = seen.content().what() == TelltaleKind.SHOCK_RING;
    return Figures.taken(seen.at(), seen.who())
        .put("key", seen.key())
        .put("what", seen.content().what())
        .put("words", words.withoutPlace(seen.content()))
        .put("mm", seen.content().length())
        .put("deepestBump", ring ? deepest(DeepestBump.of(at.card(), at.travel(), seen)) : null);
  }

  private static Node deepest(DeepestBump bump) {
    Node node = new Node();
    if (bump instanceof DeepestBump.Needs needs) {
      node.put("needs", needs.missing());
    } else if (bump instanceof DeepestBump.At at) {
      node.put("beyond", at.beyond())
          .put("positionMm", at.positionMm())
          .put("toSolidMm", at.toSolidMm())
          .put("toLimitMm", at.toLimitMm());
    }
    return node;
  }

  static void car(Node car, CarBook book, DriveCheck check) {
    Node driveCheck =
        new Node()
            .put("outcome", CheckWords.outcome(check))
            .put("meetsRules", check.meetsRules())
            .put("things", CheckWords.of(book, check).stream().map(LifeFigures::thing).toList());
    car.put("driveCheck", driveCheck)
        .put("signOffs", book.signOffs().stream().map(s -> signOff(book, s)).toList())
        .put("toDo", book.toDos().stream().map(LifeFigures::toDo).toList())
        .put("use", book.uses().stream().map(LifeFigures::use).toList());
  }

  private static Node toDo(SeenToDo seen) {
    return Figures.taken(seen.at(), seen.who())
        .put("key", seen.key())
        .put("corner", seen.place() == null ? null : seen.toDo().corner())
        .put("words", seen.toDo().words())
        .put("open", seen.open());
  }

  private static Node use(SeenUse seen) {
    Optional<Content.Use> use = Optional.ofNullable(seen.use());
    return Figures.taken(seen.at(), seen.who())
        .put("key", seen.key())
        .put("words", seen.words())
        .put("unit", use.map(u -> u.unit()))
        .put("amount", use.map(u -> u.amount()));
  }

  private static Node thing(Task line) {
    return new Node()
        .put("why", line.thing().why())
        .put("corner", line.thing().corner())
        .put("count", line.thing().count())
        .put("words", line.words())
        .put("page", line.href());
  }

  /** As it was kept, beside what was written of it in the book. */
  private static Node signOff(CarBook book, SeenSignOff seen) {
    return Figures.taken(seen.at(), seen.who())
        .put("key", seen.key())
        .put("takenBack", seen.takenBack())
        .put("since", seen.since(book).size())
        .put("kept", Bodies.write(seen.signOff()))
        .put("sameToday", SignOffCopy.sameToday(book, seen.signOff()));
  }
}
