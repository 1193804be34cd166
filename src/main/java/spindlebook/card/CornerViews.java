package spindlebook.card;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import spindlebook.card.CornerView.DoubtRow;
import spindlebook.card.CornerView.EndView;
import spindlebook.card.CornerView.HeightRow;
import spindlebook.card.CornerView.LineView;
import spindlebook.card.CornerView.MidTravelView;
import spindlebook.card.CornerView.NeedView;
import spindlebook.card.CornerView.StaleList;
import spindlebook.card.CornerView.StaleRow;
import spindlebook.card.CornerView.Usable;
import spindlebook.corner.Card;
import spindlebook.corner.Change;
import spindlebook.corner.Content;
import spindlebook.corner.InForce;
import spindlebook.corner.Pairing;
import spindlebook.corner.SeenHeight;
import spindlebook.corner.SeenReading;
import spindlebook.corner.Standing;
import spindlebook.finding.LimitNames;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.HeldAtWheel;
import spindlebook.travel.Limit;
import spindlebook.travel.Need;
import spindlebook.travel.StopFound;
import spindlebook.travel.Total;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;
import spindlebook.web.BladeDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.Lengths;
import spindlebook.web.Link;
import spindlebook.web.SettingRow;
import spindlebook.web.State;

/** Lays a card and its travel out as the corner's page. */
final class CornerViews {
  private static final int OPEN_AT_MOST = 5;

  private final Card card;
  private final TravelFindings travel;
  private final TravelWords words;
  private final Lengths lengths;
  private final String corner;

  CornerViews(Card card, TravelFindings travel) {
    this.card = card;
    this.travel = travel;
    this.words = new TravelWords(card, travel);
    this.lengths = words.lengths();
    this.corner = card.corner();
  }

  CornerView view() {
    return new CornerView(
        corner,
        Blades.of(card, travel, true).map(BladeDrawing::standing).orElse(null),
        usable("As set, stop to stop", travel.asSet()),
        usable("As it could be, limit to limit", travel.asItCouldBe()),
        List.of(end(travel.droop()), end(travel.bump())),
        travel.midTravel().stream()
            .map(m -> new MidTravelView(Shown.state(m.outcome()), words.midTravel(m)))
            .toList(),
        GapSheets.of(card, words),
        card.adjusters().stream().map(this::setting).toList(),
        stale(),
        card.doubts().stream()
            .map(
                d ->
                    new DoubtRow(
                        d.key(), d.kind() + ": " + d.words(), d.doubt(), "/entries/" + d.key()))
            .toList(),
        heights(),
        List.of(
            new Link("Limits", "/corners/" + corner + "/limits"),
            new Link("Print", "/corners/" + corner + "/print"),
            new Link("curves", "/corners/" + corner + "/curves"),
            new Link("bump steer", "/corners/" + corner + "/bump-steer"),
            new Link("alignment", "/corners/" + corner + "/alignment"),
            new Link("rod ends on paper", "/corners/" + corner + "/rod-ends"),
            new Link("wheel on paper", "/corners/" + corner + "/wheel"),
            new Link("watched", "/corners/" + corner + "/watch-points"),
            new Link("given, held back", "/corners/" + corner + "/given"),
            new Link("fasteners", "/corners/" + corner + "/fasteners"),
            new Link("telltales", "/corners/" + corner + "/telltales"),
            new Link("photos", "/corners/" + corner + "/photos"),
            new Link("to do", "/cars/" + card.car() + "/to-do?corner=" + corner),
            new Link("rounds", "/corners/" + corner + "/rounds"),
            new Link("blank sheet", "/corners/" + corner + "/paper"),
            new Link("in the book", "/cars/" + card.car() + "/book?corner=" + corner)),
        travel
            .rawMm()
            .map(f -> "Raw travel read so far: " + lengths.text(f.value()) + ".")
            .orElse(""),
        "Positions are " + words.zero().words() + ", + towards bump.");
  }

  private Usable usable(String title, Total total) {
    if (total.mm().isEmpty()) {
      String needs =
          total.needs().isEmpty() ? "no limit found yet" : "needs " + words.needs(total.needs());
      return new Usable(title, null, "", null, null, needs);
    }
    return new Usable(
        title,
        lengths.figure(total.mm().get()),
        total.atLeast() ? "at least: an end has no limit as far as it was read" : "",
        total.droopMm().map(lengths::figure).orElse(null),
        total.bumpMm().map(lengths::figure).orElse(null),
        total.droopMm().isEmpty() ? "no ride height read: not split" : "");
  }

  private EndView end(EndFindings end) {
    boolean droop = end.end() == End.DROOP;
    List<LineView> lines = new ArrayList<>();
    for (EndFindings.Reach reach : end.reaches()) {
      reach.stop().ifPresent(s -> lines.add(stop(s, reach.pairing(), droop)));
    }
    end.heldBack().ifPresent(h -> lines.add(held(h, droop)));
    int shown = 0;
    for (Limit limit : end.limits()) {
      boolean tells = limit.found() || limit.outcome() != Outcome.CLEAR;
      if (tells && !(limit.outcome() == Outcome.NEEDS) && shown++ < 6) {
        lines.add(limit(limit, end.rules().filter(limit::equals).isPresent()));
      }
    }
    end.neededStopMm()
        .filter(n -> end.rules().isPresent())
        .ifPresent(
            n ->
                lines.add(
                    new LineView(
                        droop ? "strap must stop at or above" : "stop must be solid at or below",
                        words.position(n),
                        null,
                        List.of())));
    end.marginMm()
        .ifPresent(
            m ->
                lines.add(
                    new LineView(
                        TravelWords.marginName(end),
                        words.margin(end, m),
                        Shown.state(end.outcome()),
                        List.of())));
    String href = end.cure().map(c -> CureAddress.of(card, c)).orElse(null);
    return new EndView(
        droop ? "Droop" : "Bump",
        Shown.state(end.outcome()),
        words.finding(end),
        words.cure(end),
        href,
        lines,
        end.needs().stream().map(this::need).toList(),
        needsHref(end.needs()));
  }

  private LineView stop(StopFound stop, Pairing pairing, boolean droop) {
    String what =
        droop
            ? "strap stops the wheel at"
            : stop.computed()
                ? "bump stop solid at, from touch and crush"
                : "bump stop solid at, as read";
    if (stop.otherMm() != null) {
      what += " (the further of two that disagree)";
    }
    what += LimitNames.pairing(pairing);
    State state = stop.notConfirmed() ? State.PUT_BACK : null;
    return new LineView(
        what, words.position(stop.positionMm()), state, ReadingLinks.of(card, stop.readings()));
  }

  private LineView held(HeldAtWheel held, boolean droop) {
    String what = droop ? "stretch still to come, at the wheel" : "impact held back, at the wheel";
    if (held.atStopMm() != null && held.atStopMm().value() > 0) {
      what += ", " + lengths.text(held.atStopMm().value()) + " at the strap";
    }
    if (!held.because().isEmpty()) {
      what +=
          "; all of it, until the strap is read on it again ("
              + String.join("; ", held.because())
              + ")";
    }
    return new LineView(
        what, lengths.figure(held.mm()), null, ReadingLinks.of(card, held.readings()));
  }

  private LineView limit(Limit limit, boolean rules) {
    String what = words.name(limit) + (rules ? ", acts first" : "") + words.between(limit);
    FigureText figure = limit.positionMm() == null ? null : words.position(limit.positionMm());
    return new LineView(
        what, figure, Shown.state(limit.outcome()), ReadingLinks.of(card, limit.readings()));
  }

  private NeedView need(Need need) {
    return new NeedView(words.need(need), NeedAddress.of(corner, words, List.of(need)));
  }

  private String needsHref(List<Need> needs) {
    List<Need> toRead = needs.stream().filter(n -> n.toRead() != null).distinct().toList();
    return toRead.size() < 2 ? null : NeedAddress.of(corner, words, toRead);
  }

  private SettingRow setting(InForce inForce) {
    Optional<Change> last =
        card.changes().stream()
            .filter(c -> c.n() == inForce.since() && inForce.since() > 0)
            .findFirst();
    String since =
        inForce.inDoubt().isEmpty()
            ? last.map(c -> Days.day(c.at()) + ", n " + c.n()).orElse("")
            : "another setting waits for an answer";
    return new SettingRow(
        inForce.adjuster().name(),
        inForce.setting() == null ? null : FigureText.of(inForce.setting().inWords(), ""),
        since,
        "/corners/" + corner + "/adjustments/" + inForce.adjuster().adjuster());
  }

  private StaleList stale() {
    List<StaleRow> rows =
        card.readAgain().stream()
            .map(r -> new StaleRow(what(r.toRead()), Shown.state(r.stands()), because(r.because())))
            .toList();
    return rows.isEmpty() ? null : new StaleList(rows, rows.size() <= OPEN_AT_MOST);
  }

  private String what(Content.ToRead t) {
    String height =
        t.name().words()
            + (t.label() == null ? "" : ", " + t.label())
            + LimitNames.pairing(t.pairing());
    if (t.quantity() == null) {
      return "where '" + height + "' lies";
    }
    return card.what(t) + " · " + height + " · " + t.steering().words();
  }

  private static String because(List<Change> changes) {
    return changes.stream().map(Change::words).distinct().collect(Collectors.joining("; "));
  }

  private List<HeightRow> heights() {
    return card.heights().stream()
        .filter(h -> h.stop() != Standing.REPLACED)
        .sorted(
            Comparator.comparingDouble(
                (SeenHeight h) ->
                    h.positionMm() == null ? Double.MAX_VALUE : -h.positionMm().value()))
        .map(this::height)
        .toList();
  }

  private HeightRow height(SeenHeight h) {
    long readings = card.readingsAt(h.key()).stream().filter(SeenReading::counts).count();
    State state = !h.stands().counts() ? Shown.state(h.stands()) : Shown.state(h.stop());
    return new HeightRow(
        h.key(),
        h.words(),
        h.positionMm() == null ? null : words.position(h.positionMm()),
        state,
        Days.day(h.at()) + ", " + Counted.of(readings, "reading"),
        "/heights/" + h.key());
  }
}
