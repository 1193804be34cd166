package spindlebook.limits;

import java.util.List;
import java.util.stream.Collectors;
import spindlebook.advice.Ladder;
import spindlebook.advice.Rung;
import spindlebook.advice.Win;
import spindlebook.card.TravelWords;
import spindlebook.drawing.FigureText;
import spindlebook.travel.End;
import spindlebook.travel.Need;
import spindlebook.uncertainty.Figure;

/** One end's ladder in sentences: what its rungs are called, win, and are cured by. */
public record LadderWords(TravelWords words, Ladder ladder) {
  private boolean droop() {
    return ladder.end() == End.DROOP;
  }

  /** "tie rod to upper arm, full right"; the stop by what it is, with what is held back. */
  public String name(Rung rung) {
    if (rung.limit() != null) {
      return words.name(rung.limit());
    }
    String condition = rung.condition().isEmpty() ? "" : ", " + rung.condition();
    return switch (rung.what()) {
      case STOP -> (droop() ? "the strap, stretched" : "the bump stop, with impact") + condition;
      case SHOCK ->
          droop() ? "shock's reserve at its open end" : "shock's reserve at its closed end";
      case GROUND -> "frame to ground";
      case GAP, ANGLE, PLUNGE -> "a watch point";
    };
  }

  private String name(int rung) {
    return name(ladder.rungs().get(rung));
  }

  public String curedBy(Rung rung) {
    String place =
        switch (rung.what()) {
          case STOP -> droop() ? "a longer strap" : "a thinner spacer";
          case GAP -> "room made where it acts";
          case ANGLE -> "a joint or mount that lets it swing further";
          case PLUNGE -> "a shaft or joint with more plunge";
          case SHOCK -> "a shock, or mounts, with more stroke there";
          case GROUND -> "the frame, or what hangs under it, higher";
        };
    return rung.curedBy().contains(Rung.CuredBy.STEERING_STOP) ? place + ", or less lock" : place;
  }

  // --- what is won

  /** "fixing 1 adds at least 2 in"; empty where nothing comes of it. */
  String fix(Rung rung) {
    Win win = rung.wins();
    FigureText figure = figure(win);
    String amount =
        (word(win) + (figure == null ? "" : " " + figure.plain() + "\u00a0" + figure.unit()))
            .strip();
    return figure == null ? "" : "fixing 1 adds " + amount;
  }

  /** What stands in the column of wins in front of a figure, or in its place. */
  public String word(Win win) {
    if (win instanceof Win.Travel travel) {
      return travel.upTo()
          ? travel.atLeast() ? "about" : "up to"
          : travel.atLeast() ? "at least" : "";
    }
    if (win instanceof Win.AsFarAsRead) {
      return "at least";
    }
    if (win instanceof Win.Withheld withheld) {
      return figure(withheld) == null ? "?" : "at most";
    }
    if (win instanceof Win.SameStop same) {
      return "as above, " + ladder.rungs().get(same.other()).condition();
    }
    return win instanceof Win.Nothing
        ? "no travel by itself"
        : win instanceof Win.NothingBeyond ? "nothing comes after it" : "";
  }

  /** Null where none is told. */
  public FigureText figure(Win win) {
    Figure mm = win.mm();
    return mm == null || mm.value() < 0 ? null : words.lengths().figure(mm);
  }

  public String winning(Rung rung) {
    return rung.state() == Rung.State.EVERYWHERE
        ? "Comes before all others: until it is fixed, nothing below adds travel."
        : winning(rung.what() == Rung.What.STOP ? "Let it out" : "Fix it", rung.wins());
  }

  /** Of less lock, which cures all that acts at it at once. */
  String lessLock(Win win) {
    return winning("Less lock", win);
  }

  private String winning(String doing, Win win) {
    if (win instanceof Win.Travel travel) {
      return doing + ": " + amount(travel) + " more travel; next is " + name(travel.next()) + ".";
    }
    if (win instanceof Win.Nothing nothing) {
      return nothing(doing, nothing);
    }
    if (win instanceof Win.ActsLater later) {
      return doing + ": nothing yet, first comes " + name(later.first()) + ".";
    }
    if (win instanceof Win.AsFarAsRead read) {
      return doing
          + ": at least "
          + words.lengths().text(read.mm().value())
          + " more travel; further out it needs "
          + needs(read.needs())
          + ".";
    }
    if (win instanceof Win.Withheld withheld) {
      String most = figure(win) == null ? "?" : "at most " + words.lengths().text(win.mm().value());
      return doing
          + ": "
          + most
          + (withheld.needs().isEmpty() ? "." : "; needs " + needs(withheld.needs()) + ".");
    }
    if (win instanceof Win.SameStop) {
      return "The same " + (droop() ? "strap" : "bump stop") + ", let out for both at once.";
    }
    return win instanceof Win.NothingBeyond
        ? "Nothing else was found to limit this end."
        : "Clear as far as it was read.";
  }

  /** What is to be read further out is counted, and the place where that serves for all. */
  private String needs(List<Need> needs) {
    List<Need> beyond = needs.stream().filter(n -> n.noHigherThanMm() != null).toList();
    if (beyond.size() <= 2) {
      return words.needs(needs);
    }
    int outward = ladder.end().outward();
    double furthestMm =
        beyond.stream().mapToDouble(n -> n.noHigherThanMm() * outward).max().orElseThrow()
            * outward;
    List<Need> others = needs.stream().filter(n -> !beyond.contains(n)).toList();
    return (others.isEmpty() ? "" : words.needs(others) + ", and ")
        + beyond.size()
        + " readings at "
        + words.fromZero(furthestMm)
        + ", or beyond";
  }

  private String amount(Win.Travel travel) {
    String word = word(travel);
    return (word.isEmpty() ? "" : word + " ") + words.lengths().text(travel.mm().value());
  }

  private String nothing(String doing, Win.Nothing nothing) {
    List<Integer> others = nothing.together().subList(1, nothing.together().size());
    String names = others.stream().map(this::name).collect(Collectors.joining("; "));
    return doing
        + " alone: nothing. At the same place, "
        + words.lengths().text(Math.max(0, nothing.apartMm().value()))
        + " ± "
        + words.lengths().plusMinus(nothing.apartMm().U())
        + " apart: "
        + names
        + ". "
        + winning(others.size() == 1 ? "Fix both" : "Fix all of them", nothing.all());
  }
}
