package spindlebook.figures;

import java.util.List;
import java.util.Optional;
import spindlebook.advice.Ladder;
import spindlebook.advice.LockLimits;
import spindlebook.advice.NextReading;
import spindlebook.advice.Rung;
import spindlebook.advice.Win;
import spindlebook.card.TravelWords;
import spindlebook.fold.Card;
import spindlebook.page.Posted;
import spindlebook.travel.End;
import spindlebook.travel.Need;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Settles;

/** The ladder of each end, and what to read next, as JSON. */
record LadderFigures(TravelWords words) {
  static void put(Node corner, Card card, TravelFindings travel, TravelWords words) {
    LadderFigures figures = new LadderFigures(words);
    Node ladders = new Node();
    corner.put("ladders", ladders);
    for (End end : End.values()) {
      ladders.put(Posted.word(end), figures.ladder(Ladder.of(travel, end)));
    }
    corner.put("nextReadings", words.next().stream().map(figures::next).toList());
  }

  private Node ladder(Ladder ladder) {
    return new Node()
        .put("rungs", ladder.rungs().stream().map(this::rung).toList())
        .put("locks", ladder.locks().stream().map(this::lock).toList());
  }

  private Node lock(LockLimits lock) {
    return new Node()
        .put("lock", lock.lock())
        .put("rungs", lock.rungs())
        .put("midTravel", lock.midTravel().size())
        .put("lessLockWins", win(lock.wins()));
  }

  private Node rung(Rung rung) {
    return new Node()
        .put("acts", rung.what())
        .put("what", rung.limit() == null ? null : words.name(rung.limit()))
        .put("state", rung.state())
        .put("atMm", rung.atMm())
        .put("brokenMm", rung.brokenMm())
        .put("condition", rung.condition().isEmpty() ? null : rung.condition())
        .put("curedBy", rung.curedBy().stream().sorted().toList())
        .put("wins", win(rung.wins()))
        .put("needs", needs(rung.needs()));
  }

  private Node win(Win win) {
    Node node = new Node();
    if (win instanceof Win.Travel travel) {
      return node.put("how", "travel")
          .put("mm", travel.mm())
          .put("next", travel.next())
          .put("upTo", travel.upTo())
          .put("atLeast", travel.atLeast());
    }
    if (win instanceof Win.Nothing nothing) {
      return node.put("how", "nothing")
          .put("apartMm", nothing.apartMm())
          .put("together", nothing.together())
          .put("all", win(nothing.all()));
    }
    if (win instanceof Win.ActsLater later) {
      return node.put("how", "another-acts-before").put("first", later.first());
    }
    if (win instanceof Win.AsFarAsRead read) {
      return node.put("how", "as-far-as-read")
          .put("mm", read.mm())
          .put("needs", needs(read.needs()));
    }
    if (win instanceof Win.Withheld withheld) {
      return node.put("how", "withheld")
          .put("atMostMm", win.mm())
          .put("needs", needs(withheld.needs()));
    }
    if (win instanceof Win.SameStop same) {
      return node.put("how", "same-stop").put("other", same.other());
    }
    return node.put("how", win instanceof Win.NothingBeyond ? "nothing-beyond" : "not-met");
  }

  private List<String> needs(List<Need> needs) {
    return needs.stream().map(words::need).toList();
  }

  private Node next(NextReading next) {
    return new Node()
        .put("why", next.why())
        .put("words", words.need(next.need()))
        .put("end", next.end())
        .put("decides", next.limit() == null ? null : words.name(next.limit()))
        .put("nearMm", next.nearMm())
        .put("withholds", next.withholds())
        .put("atStakeMm", next.atStakeMm())
        .put("decidesTakenOnce", next.decides().stream().map(words::name).toList())
        .put("times", times(next.settles()));
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
