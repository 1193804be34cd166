package spindlebook.trial;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.advice.StopMoved;
import spindlebook.card.Addressed;
import spindlebook.card.CureAddress;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.curve.PositionToSetting;
import spindlebook.definition.Adjuster;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Dimension;
import spindlebook.definition.Setting;
import spindlebook.definition.SettingUnit;
import spindlebook.drawing.Lengths;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.finding.CornerFigure;
import spindlebook.finding.Findings;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.InForce;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Field;
import spindlebook.page.FormPart;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.page.Posted;
import spindlebook.plan.OnPaper;
import spindlebook.setting.AdjustmentForm;
import spindlebook.setting.WouldMove;
import spindlebook.sheet.Heads;
import spindlebook.sheet.Rows;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.End;
import spindlebook.uncertainty.Figure;

/** A change tried on paper: the book with one entry more, beside today; nothing is written. */
public record TrialPages(Histories histories) {
  private static final Heads HEADS = new Heads("now", "tried");

  public void trial(Context ctx) {
    Card card = Addressed.corner(ctx, histories);
    Posted asked = new Posted(ctx.queryParamMap());
    Optional<InForce> adjuster = card.adjuster(asked.text("adjuster"));
    Content content = null;
    if (adjuster.isPresent() && ctx.queryParam("to") != null) {
      InForce now = adjuster.get();
      Setting to = AdjustmentForm.setting(asked, "to", now.adjuster(), card.details().unit());
      if (asked.ok()) {
        content =
            new Content.Adjustment(
                card.corner(), now.adjuster().adjuster(), now.setting(), to, null, null);
      }
    } else if (asked.has("happening")) {
      HappeningKind what = asked.word("happening", HappeningKind.class, null);
      if (what != null) {
        content = new Content.Happening(card.car(), card.corner(), what, null);
      }
    }
    PageFrame frame =
        PageFrame.of(
                "On paper · " + card.place().words() + " · " + card.details().name(),
                "Try it first")
            .sub(card.details().name() + ", " + card.place().words() + ". Nothing is written.")
            .ownSheets("car.css")
            .plan(Shown.plan(card))
            .up("all settings", "/corners/" + card.corner() + "/adjustments")
            .caution(Cautions.SETTING);
    TrialView view = view(card, adjuster, asked, content);
    Html.show(ctx, asked, Html.TEMPLATES.trialTrial(frame, view));
  }

  private TrialView view(Card card, Optional<InForce> adjuster, Posted asked, Content content) {
    List<FormPart> parts = new ArrayList<>();
    adjuster.ifPresent(
        a ->
            parts.add(
                new FormPart.Typed(
                    asked.fill(
                        Field.of("to", "On paper, set " + a.adjuster().name() + " to")
                            .hint(
                                a.setting() == null
                                    ? "What it is set to was never said."
                                    : "Now " + a.setting().inWords() + ".")))));
    List<TrialView.Side> sides = new ArrayList<>();
    List<StopMoved> foretold = List.of();
    List<String> stale = new ArrayList<>();
    boolean again = false;
    if (content != null) {
      CarBook book = histories.of(card.car());
      CarBook onPaper = OnPaper.with(book, List.of(content));
      Card then = onPaper.card(card.corner());
      if (content instanceof Content.Adjustment a) {
        foretold = foretold(card, adjuster.orElseThrow().adjuster(), a);
      }
      sides.add(compared(book, card, onPaper, then, foretold));
      stale.addAll(WouldMove.lines(card, then));
      again = !then.toReadAgainAfter(OnPaper.key(book)).isEmpty();
      for (String corner : book.corners()) {
        Card other = book.card(corner);
        Card otherThen = onPaper.card(corner);
        List<String> moved = WouldMove.lines(other, otherThen);
        if (!corner.equals(card.corner()) && !moved.isEmpty()) {
          sides.add(compared(book, other, onPaper, otherThen, List.of()));
          moved.forEach(line -> stale.add(other.place().words() + ": " + line));
        }
      }
    }
    return new TrialView(
        card,
        adjuster.map(a -> a.adjuster().adjuster()).orElse(""),
        parts,
        content == null ? "" : words(content, adjuster),
        sides,
        predicted(card, foretold),
        stale,
        again,
        doIt(card, content),
        content instanceof Content.Adjustment ? "Open the form with this value" : "Save");
  }

  /** The corner as the book would know it at once; a margin that is not known then as foretold. */
  private static TrialView.Side compared(
      CarBook book, Card today, CarBook onPaper, Card then, List<StopMoved> foretold) {
    Map<CornerFigure, Figure> margins = new EnumMap<>(CornerFigure.class);
    for (StopMoved moved : foretold) {
      moved
          .marginMm()
          .ifPresent(
              mm ->
                  margins.merge(
                      CornerFigure.margin(moved.end()),
                      mm,
                      (a, b) -> a.value() <= b.value() ? a : b));
    }
    return new TrialView.Side(
        today.place().words(),
        new Rows(
                Findings.of(today, book.mirror(today), false),
                Findings.of(then, onPaper.mirror(then), false, margins),
                new Lengths(today.details().unit()))
            .travel(HEADS));
  }

  private static String words(Content content, Optional<InForce> adjuster) {
    if (content instanceof Content.Adjustment a) {
      String from = a.from() == null ? "" : a.from().inWords() + " → ";
      return adjuster.orElseThrow().adjuster().name() + ": " + from + a.to().inWords();
    }
    return ((Content.Happening) content).what().words();
  }

  private static String doIt(Card card, Content content) {
    if (content instanceof Content.Adjustment a) {
      return CureAddress.of(card.corner(), a.adjuster(), a.to());
    }
    return content == null ? null : "/cars/" + card.car() + "/happenings/new";
  }

  /** A strap that was never set is as long as it is given to be. */
  private static List<StopMoved> foretold(Card card, Adjuster adjuster, Content.Adjustment change) {
    boolean strap =
        adjuster.kind() == AdjusterKind.LIMIT_STRAP && adjuster.unit() == SettingUnit.LENGTH;
    Setting from =
        change.from() != null || !strap
            ? change.from()
            : card.given(Dimension.NEW_STRAP_LENGTH)
                .map(g -> new Setting(g.length().typed(), SettingUnit.LENGTH, g.length().mm()))
                .orElse(null);
    return StopMoved.of(card, CornerTravel.of(card), adjuster, from, change.to());
  }

  private static List<String> predicted(Card card, List<StopMoved> foretold) {
    TravelWords words = new TravelWords(card, CornerTravel.of(card));
    return foretold.stream().flatMap(moved -> lines(moved, words)).toList();
  }

  private static Stream<String> lines(StopMoved moved, TravelWords words) {
    String stop = moved.end() == End.DROOP ? "the strap" : "the bump stop";
    String paired = moved.pairing() == null ? "" : ", " + moved.pairing().words();
    String how =
        moved.by() == PositionToSetting.By.RATIO
            ? " (by the ratio alone: no reading lies there)"
            : "";
    return Stream.concat(
        Stream.of(
            "Predicted"
                + paired
                + ": "
                + stop
                + " would stop the wheel at "
                + signed(moved.positionMm().plus(-words.zero().mm()), words.lengths())
                + " "
                + words.zero().words()
                + how
                + "."),
        moved.marginMm().stream()
            .map(
                m ->
                    "Predicted margin in "
                        + (moved.end() == End.DROOP ? "droop" : "bump")
                        + paired
                        + ": "
                        + signed(m, words.lengths())
                        + "."));
  }

  private static String signed(Figure mm, Lengths lengths) {
    return lengths.signedText(mm.value()) + " ± " + lengths.plusMinus(mm.U());
  }
}
