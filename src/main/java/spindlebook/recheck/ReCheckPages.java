package spindlebook.recheck;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.card.Addressed;
import spindlebook.card.Capital;
import spindlebook.card.CornerBar;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.entry.TelltaleKind;
import spindlebook.fastener.FastenerLine;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.SeenFastener;
import spindlebook.fold.SeenToDo;
import spindlebook.fold.Written;
import spindlebook.log.Histories;
import spindlebook.page.Cautions;
import spindlebook.page.Html;
import spindlebook.page.PageFrame;
import spindlebook.plan.ReCheck;
import spindlebook.telltale.TelltalePages;
import spindlebook.telltale.TelltaleView;
import spindlebook.words.EntryWords;

/** The ten-minute re-check between two drives, one corner at a time. */
public record ReCheckPages(Histories histories) {
  private static final int MOST_TOUCHED = 12;
  private static final Map<String, TelltaleKind> READ =
      Map.of(
          "strap", TelltaleKind.STRAP_LENGTH,
          "ring", TelltaleKind.SHOCK_RING,
          "pressure", TelltaleKind.TYRE_PRESSURE);

  public void reCheck(Context ctx) {
    CarBook history = Addressed.car(ctx, histories);
    String car = history.car().orElseThrow();
    ReCheck check = ReCheck.of(history);
    EntryWords words = new EntryWords(history);
    List<String> corners = history.corners();
    Optional<Card> chosen =
        Optional.ofNullable(ctx.queryParam("corner"))
            .filter(corners::contains)
            .or(() -> corners.stream().findFirst())
            .map(c -> histories.card(car, c));
    List<ReCheckView.Tab> tabs =
        corners.stream()
            .map(
                c ->
                    new ReCheckView.Tab(
                        histories.card(car, c).place().words(),
                        "/cars/" + car + "/re-check?corner=" + c,
                        chosen.filter(card -> card.corner().equals(c)).isPresent()))
            .toList();
    List<String> done = new ArrayList<>();
    List<TelltaleView.Block> blocks = new ArrayList<>();
    List<SeenFastener> nuts = new ArrayList<>();
    chosen.ifPresent(
        card -> {
          for (TelltaleView.Block block : TelltalePages.betweenDrives(card)) {
            Optional<Written<Content.Telltale>> read =
                check.read(history, card.corner(), READ.get(block.kind()));
            read.ifPresentOrElse(
                t -> done.add(Capital.of(words.withoutPlace(t.content()))),
                () -> blocks.add(block));
          }
          history.fasteners().stream()
              .filter(f -> f.corner().equals(card.corner()))
              .filter(f -> f.state() != SeenFastener.State.NOT_SAID)
              .forEach(nuts::add);
        });
    List<FastenerLine> toLook =
        nuts.stream()
            .filter(f -> f.open() || !check.since(f.said().n()))
            .sorted(Comparator.comparing((SeenFastener f) -> !f.open()))
            .map(f -> FastenerLine.of(f, words, history.n()))
            .toList();
    PageFrame frame =
        CornerBar.under(history, "Re-check", "Ten-minute re-check")
            .sub("Between two drives, one corner after the other.")
            .caution(Cautions.MEASURING);
    Html.show(
        ctx,
        Html.TEMPLATES.recheckRecheck(
            frame,
            new ReCheckView(
                car,
                check
                    .drive()
                    .map(d -> "Last drive " + Days.day(d.at()) + ": " + d.words() + ".")
                    .orElse("No drive is in the book yet."),
                check.before() == null ? "" : " since " + Days.day(check.before().at()),
                check.touched().stream()
                    .limit(MOST_TOUCHED)
                    .map(
                        e ->
                            new ReCheckView.Touched(
                                words.of(history.standing(e.key()).orElseThrow()),
                                Days.day(e.at()) + " · " + e.who(),
                                "/entries/" + e.key()))
                    .toList(),
                Math.max(0, check.touched().size() - MOST_TOUCHED),
                tabs,
                chosen.map(c -> "/corners/" + c.corner() + "/telltales").orElse(null),
                done,
                blocks,
                toLook,
                nuts.size() - toLook.size(),
                (int) history.toDos().stream().filter(SeenToDo::open).count())));
  }
}
