package spindlebook.figures;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Optional;
import spindlebook.card.TravelWords;
import spindlebook.fold.Card;
import spindlebook.page.Posted;
import spindlebook.travel.End;
import spindlebook.travel.Ladder;
import spindlebook.travel.LockLimits;
import spindlebook.travel.Need;
import spindlebook.travel.NextReading;
import spindlebook.travel.Rung;
import spindlebook.travel.TravelFindings;
import spindlebook.travel.Win;
import spindlebook.uncertainty.Settles;

/** The ladder of each end, and what to read next, as JSON. */
final class LadderFigures {
  private final TravelWords words;

  private LadderFigures(TravelWords words) {
    this.words = words;
  }

  static void put(ObjectNode corner, Card card, TravelFindings travel, TravelWords words) {
    LadderFigures figures = new LadderFigures(words);
    ObjectNode ladders = corner.putObject("ladders");
    for (End end : End.values()) {
      figures.ladder(ladders.putObject(Posted.word(end)), Ladder.of(travel, end));
    }
    ArrayNode next = corner.putArray("nextReadings");
    words.next().forEach(r -> figures.next(next.addObject(), r));
  }

  private void ladder(ObjectNode node, Ladder ladder) {
    ArrayNode rungs = node.putArray("rungs");
    ladder.rungs().forEach(r -> rung(rungs.addObject(), r));
    ArrayNode locks = node.putArray("locks");
    for (LockLimits lock : ladder.locks()) {
      ObjectNode at = locks.addObject();
      at.put("lock", Posted.word(lock.lock()));
      indices(at, "rungs", lock.rungs());
      at.put("midTravel", lock.midTravel().size());
      win(at.putObject("lessLockWins"), lock.wins());
    }
  }

  private void rung(ObjectNode node, Rung rung) {
    node.put("acts", Posted.word(rung.what()));
    if (rung.limit() != null) {
      node.put("what", words.name(rung.limit()));
    }
    node.put("state", Posted.word(rung.state()));
    Figures.figure(node, "atMm", Optional.ofNullable(rung.atMm()));
    Figures.figure(node, "brokenMm", Optional.ofNullable(rung.brokenMm()));
    if (!rung.condition().isEmpty()) {
      node.put("condition", rung.condition());
    }
    ArrayNode cures = node.putArray("curedBy");
    rung.curedBy().stream().sorted().forEach(c -> cures.add(Posted.word(c)));
    win(node.putObject("wins"), rung.wins());
    needs(node, rung.needs());
  }

  private void win(ObjectNode node, Win win) {
    if (win instanceof Win.Travel travel) {
      node.put("how", "travel");
      Figures.figure(node, "mm", Optional.of(travel.mm()));
      node.put("next", travel.next());
      node.put("upTo", travel.upTo());
      node.put("atLeast", travel.atLeast());
    } else if (win instanceof Win.Nothing nothing) {
      node.put("how", "nothing");
      Figures.figure(node, "apartMm", Optional.of(nothing.apartMm()));
      indices(node, "together", nothing.together());
      win(node.putObject("all"), nothing.all());
    } else if (win instanceof Win.ActsLater later) {
      node.put("how", "another-acts-before");
      node.put("first", later.first());
    } else if (win instanceof Win.AsFarAsRead read) {
      node.put("how", "as-far-as-read");
      Figures.figure(node, "mm", Optional.of(read.mm()));
      needs(node, read.needs());
    } else if (win instanceof Win.Withheld withheld) {
      node.put("how", "withheld");
      Figures.figure(node, "atMostMm", Optional.ofNullable(win.mm()));
      needs(node, withheld.needs());
    } else if (win instanceof Win.SameStop same) {
      node.put("how", "same-stop");
      node.put("other", same.other());
    } else {
      node.put("how", win instanceof Win.NothingBeyond ? "nothing-beyond" : "not-met");
    }
  }

  private static void indices(ObjectNode node, String name, List<Integer> rungs) {
    ArrayNode array = node.putArray(name);
    rungs.forEach(array::add);
  }

  private void needs(ObjectNode node, List<Need> needs) {
    ArrayNode array = node.putArray("needs");
    needs.forEach(n -> array.add(words.need(n)));
  }

  private void next(ObjectNode node, NextReading next) {
    node.put("why", Posted.word(next.why()));
    node.put("words", words.need(next.need()));
    if (next.end() != null) {
      node.put("end", Posted.word(next.end()));
    }
    if (next.limit() != null) {
      node.put("decides", words.name(next.limit()));
    }
    if (next.nearMm() != null) {
      node.put("nearMm", next.nearMm());
    }
    node.put("withholds", next.withholds());
    node.put("atStakeMm", next.atStakeMm());
    ArrayNode once = node.putArray("decidesTakenOnce");
    next.decides().forEach(l -> once.add(words.name(l)));
    times(next.settles()).ifPresent(n -> node.put("times", n));
  }

  /** How often in all it has to be read; empty where once is enough, or repeating does not help. */
  private static Optional<Integer> times(Settles settles) {
    if (settles instanceof Settles.Repeats repeats) {
      return Optional.of(repeats.n());
    }
    if (settles instanceof Settles.RepeatsOrFinerTool either) {
      return Optional.of(either.n());
    }
    return settles instanceof Settles.RepeatsWithFinerTool both
        ? Optional.of(both.n())
        : Optional.empty();
  }
}
