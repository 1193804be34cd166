package spindlebook.figures;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import spindlebook.drivecheck.CheckWords;
import spindlebook.drivecheck.SignOffCopy;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenFastener;
import spindlebook.fold.SeenSignOff;
import spindlebook.fold.SeenTelltale;
import spindlebook.fold.SeenToDo;
import spindlebook.fold.SeenUse;
import spindlebook.log.Bodies;
import spindlebook.page.Posted;
import spindlebook.travel.DeepestBump;
import spindlebook.travel.DriveCheck;
import spindlebook.travel.DriveCheck.Checked;
import spindlebook.words.EntryWords;

/** The drive check, sign-offs, and what drives and hands did, as JSON. */
final class LifeFigures {
  private LifeFigures() {}

  static void corner(ObjectNode corner, CarBook book, Checked at) {
    String key = at.card().corner();
    ArrayNode telltales = corner.putArray("telltales");
    EntryWords words = new EntryWords(book);
    for (SeenTelltale seen : book.telltales()) {
      if (seen.telltale().corner().equals(key)) {
        telltale(telltales.addObject(), seen, at, words);
      }
    }
    ArrayNode fasteners = corner.putArray("fasteners");
    for (SeenFastener seen : book.fasteners()) {
      if (seen.corner().equals(key)) {
        ObjectNode node = fasteners.addObject();
        node.put("adjuster", seen.adjuster().adjuster());
        node.put("state", Posted.word(seen.state()));
        node.put("open", seen.open());
        node.put("torque", seen.torque());
      }
    }
  }

  private static void telltale(ObjectNode node, SeenTelltale seen, Checked at, EntryWords words) {
    Figures.taken(node, seen.at(), seen.who());
    node.put("key", seen.key());
    node.put("what", Posted.word(seen.telltale().what()));
    node.put("words", words.withoutPlace(seen.telltale()));
    if (seen.telltale().length() != null) {
      node.put("mm", seen.telltale().length().mm());
    }
    if (seen.telltale().what() == TelltaleKind.SHOCK_RING) {
      deepest(node.putObject("deepestBump"), DeepestBump.of(at.card(), at.travel(), seen));
    }
  }

  private static void deepest(ObjectNode node, DeepestBump bump) {
    if (bump instanceof DeepestBump.Needs needs) {
      node.put("needs", Posted.word(needs.missing()));
    } else if (bump instanceof DeepestBump.At at) {
      node.put("beyond", at.beyond());
      Figures.figure(node, "positionMm", Optional.of(at.positionMm()));
      Figures.figure(node, "toSolidMm", at.toSolidMm());
      Figures.figure(node, "toLimitMm", at.toLimitMm());
    }
  }

  static void car(ObjectNode car, CarBook book, DriveCheck check) {
    driveCheck(car.putObject("driveCheck"), book, check);
    ArrayNode signOffs = car.putArray("signOffs");
    book.signOffs().forEach(s -> signOff(signOffs.addObject(), book, s));
    ArrayNode toDos = car.putArray("toDo");
    for (SeenToDo seen : book.toDos()) {
      ObjectNode node = Figures.taken(toDos.addObject(), seen.at(), seen.who());
      node.put("key", seen.key());
      if (seen.place() != null) {
        node.put("corner", seen.toDo().corner());
      }
      node.put("words", seen.toDo().words());
      node.put("open", seen.open());
    }
    ArrayNode uses = car.putArray("use");
    for (SeenUse seen : book.uses()) {
      ObjectNode node = Figures.taken(uses.addObject(), seen.at(), seen.who());
      node.put("key", seen.key());
      node.put("words", seen.words());
      if (seen.use() != null) {
        node.put("unit", Posted.word(seen.use().unit()));
        node.put("amount", seen.use().amount());
      }
    }
  }

  private static void driveCheck(ObjectNode node, CarBook book, DriveCheck check) {
    node.put("outcome", CheckWords.outcome(check));
    node.put("meetsRules", check.meetsRules());
    ArrayNode things = node.putArray("things");
    for (CheckWords.Line line : CheckWords.of(book, check)) {
      ObjectNode thing = things.addObject();
      thing.put("why", Posted.word(line.thing().why()));
      if (line.thing().corner() != null) {
        thing.put("corner", line.thing().corner());
      }
      thing.put("count", line.thing().count());
      thing.put("words", line.words());
      thing.put("page", line.href());
    }
  }

  /** As it was kept, beside what was written of it in the book. */
  private static void signOff(ObjectNode node, CarBook book, SeenSignOff seen) {
    Figures.taken(node, seen.at(), seen.who()).put("key", seen.key());
    node.put("takenBack", seen.takenBack());
    node.put("since", seen.since(book).size());
    node.set("kept", Bodies.write(seen.signOff()));
    node.put("sameToday", SignOffCopy.sameToday(book, seen.signOff()));
  }
}
