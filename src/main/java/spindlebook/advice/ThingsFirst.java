package spindlebook.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import spindlebook.advice.DriveCheck.Checked;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.Allowance;
import spindlebook.definition.Place;
import spindlebook.entry.Content;
import spindlebook.entry.HappeningKind;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.entry.TelltaleKind;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.ReadAgain;
import spindlebook.fold.SeenFastener;
import spindlebook.fold.SeenPart;
import spindlebook.fold.SeenToDo;
import spindlebook.fold.Standing;
import spindlebook.fold.Written;
import spindlebook.plan.ReCheck;
import spindlebook.travel.EndFindings;
import spindlebook.travel.HeldAtWheel;
import spindlebook.travel.Limit;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.StopFound;
import spindlebook.travel.StrapStretch;
import spindlebook.travel.UnreadReach;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.GuardBand;
import spindlebook.uncertainty.Outcome;

/** Gathers what is to see to before a drive, by the rule of {@link DriveCheck}. */
final class ThingsFirst {
  private final CarBook book;
  private final List<Checked> corners;
  private final ReCheck reCheck;
  private final List<Written<Content.Telltale>> telltales;
  private final List<SeenFastener> fasteners;
  private final List<ThingFirst> found = new ArrayList<>();

  ThingsFirst(CarBook book, List<Checked> corners) {
    this.book = book;
    this.corners = corners;
    this.reCheck = ReCheck.of(book);
    this.telltales = book.telltales();
    this.fasteners = book.fasteners();
  }

  List<ThingFirst> inOrder(List<ThingFirst> more) {
    found.addAll(more);
    if (corners.isEmpty()) {
      found.add(new ThingFirst.NotMeasured(Why.NOT_MEASURED, null, false));
    }
    for (Checked corner : corners) {
      fasteners(corner.card());
      doubts(corner.card());
      if (corner.card().heights().isEmpty()) {
        found.add(
            new ThingFirst.NotMeasured(
                Why.NOT_MEASURED, corner.card().corner(), !corner.card().rounds().isEmpty()));
      } else {
        rules(corner);
        readings(corner);
        drives(corner);
      }
      reCheck(corner.card());
    }
    parts();
    toDos();
    return found.stream().sorted(whatMattersFirst()).toList();
  }

  private Comparator<ThingFirst> whatMattersFirst() {
    return Comparator.comparing(ThingFirst::why)
        .thenComparingDouble(ThingsFirst::roomMm)
        .thenComparing(ThingsFirst::tight)
        .thenComparing(this::place);
  }

  private static double roomMm(ThingFirst thing) {
    return thing.limits().stream().mapToDouble(l -> roomMm(l, thing.why())).min().orElse(0);
  }

  /** Broken at every height before all that has a room. */
  private static double roomMm(Limit limit, Why why) {
    Figure roomMm = limit.roomMm();
    return roomMm == null
        ? why == Why.SHORT ? Double.NEGATIVE_INFINITY : 0
        : why == Why.SHORT ? roomMm.value() : roomMm.value() - roomMm.U();
  }

  private static boolean tight(ThingFirst thing) {
    return thing instanceof ThingFirst.Opened opened
        && opened.fastener().state() != SeenFastener.State.LOOSE;
  }

  private Integer place(ThingFirst thing) {
    return corners.stream()
        .filter(c -> c.card().corner().equals(thing.corner()))
        .map(c -> c.card().place().ordinal())
        .findFirst()
        .orElse(Place.values().length);
  }

  // --- rules

  private void rules(Checked corner) {
    String key = corner.card().corner();
    for (EndFindings end : List.of(corner.travel().droop(), corner.travel().bump())) {
      Optional<UnreadReach> unread = end.unreadReach();
      unread.ifPresent(u -> found.add(new ThingFirst.NotReadFarEnough(Why.CANT_TELL, key, u)));
      for (Limit limit : end.limits()) {
        why(limit.outcome())
            .filter(w -> unread.isEmpty() || !limit.mayGoPastWhatWasRead())
            .ifPresent(w -> found.add(new ThingFirst.OfLimit(w, key, end.end(), limit)));
      }
      if (end.stop().map(StopFound::otherMm).isPresent()) {
        found.add(new ThingFirst.StopsDisagree(Why.CANT_TELL, key));
      }
    }
    for (MidTravel mid : corner.travel().midTravel()) {
      why(mid.outcome()).ifPresent(w -> found.add(new ThingFirst.OfMidTravel(w, key, mid)));
    }
  }

  private static Optional<Why> why(Outcome outcome) {
    return switch (outcome) {
      case SHORT -> Optional.of(Why.SHORT);
      case CANT_TELL -> Optional.of(Why.CANT_TELL);
      case NEEDS, CLEAR -> Optional.empty();
    };
  }

  // --- readings

  private void readings(Checked corner) {
    String key = corner.card().corner();
    List<Need> missing =
        NextReading.missing(corner.card(), corner.travel()).stream()
            .map(NextReading::need)
            .distinct()
            .toList();
    missing(key, missing.stream().filter(n -> n.toRead() != null).toList());
    missing(key, missing.stream().filter(n -> n.toRead() == null).toList());
    List<ReadAgain> again =
        corner.card().readAgain().stream()
            .filter(a -> missing.stream().noneMatch(n -> a.toRead().equals(n.toRead())))
            .toList();
    again(Why.STALE, key, again, Standing.STALE);
    again(Why.NOT_CONFIRMED, key, again, Standing.PUT_BACK);
  }

  private void missing(String corner, List<Need> needs) {
    if (!needs.isEmpty()) {
      found.add(new ThingFirst.Missing(Why.MISSING, corner, needs));
    }
  }

  private void again(Why why, String corner, List<ReadAgain> all, Standing standing) {
    List<ReadAgain> these = all.stream().filter(a -> a.stands() == standing).toList();
    if (!these.isEmpty()) {
      found.add(new ThingFirst.Again(why, corner, these));
    }
  }

  private void doubts(Card card) {
    card.doubts().forEach(d -> found.add(new ThingFirst.InDoubt(Why.IN_DOUBT, card.corner(), d)));
  }

  // --- what drives did

  private void drives(Checked corner) {
    Card card = corner.card();
    last(card, TelltaleKind.SHOCK_RING).ifPresent(ring -> ring(corner, ring));
    Map<String, Written<Content.Telltale>> clay = new LinkedHashMap<>();
    telltales.stream()
        .filter(t -> of(card, t, TelltaleKind.CLAY) && t.content().point() != null)
        .forEach(t -> clay.put(t.content().point(), t));
    clay.values().stream()
        .filter(t -> !changedSince(card, t))
        .flatMap(t -> ClayGap.of(card, t.content()).stream())
        .filter(gap -> gap.outcome() == Outcome.SHORT)
        .forEach(
            gap -> found.add(new ThingFirst.NearerThanAllowed(Why.WENT_PAST, card.corner(), gap)));
    stretch(corner);
  }

  /** The last of its kind, while nothing was set or befell the corner since. */
  private Optional<Written<Content.Telltale>> last(Card card, TelltaleKind kind) {
    return telltales.stream()
        .filter(t -> of(card, t, kind))
        .reduce((earlier, later) -> later)
        .filter(t -> !changedSince(card, t));
  }

  private static boolean of(Card card, Written<Content.Telltale> seen, TelltaleKind kind) {
    return seen.content().corner().equals(card.corner()) && seen.content().what() == kind;
  }

  /** A cure ends what a telltale accused: the next drive tells anew. */
  private boolean changedSince(Card card, Written<Content.Telltale> seen) {
    return card.changes().stream()
        .filter(c -> c.n() > seen.n() && (c.place() == null || c.place() == card.place()))
        .anyMatch(c -> !driven(c.key()));
  }

  private boolean driven(String key) {
    Content content = book.standing(key).orElse(null);
    return content instanceof Content.Use
        || (content instanceof Content.Happening h && h.what() == HappeningKind.DRIVEN);
  }

  private void ring(Checked corner, Written<Content.Telltale> ring) {
    DeepestBump bump = DeepestBump.of(corner.card(), corner.travel(), ring);
    if (!(bump instanceof DeepestBump.At at)) {
      return;
    }
    boolean pastLimit = at.toLimitMm().filter(ThingsFirst::gonePast).isPresent();
    Optional<Figure> reserve = corner.travel().bump().heldBack().map(HeldAtWheel::mm);
    boolean pastStop =
        at.toSolidMm()
            .map(left -> reserve.map(left::plus).orElse(left))
            .filter(ThingsFirst::gonePast)
            .isPresent();
    if (pastLimit || pastStop) {
      found.add(
          new ThingFirst.DeeperThanAllowed(Why.WENT_PAST, corner.card().corner(), at, pastLimit));
    }
  }

  private static boolean gonePast(Figure leftMm) {
    return GuardBand.atLeast(leftMm, 0) == Outcome.SHORT;
  }

  private void stretch(Checked corner) {
    Card card = corner.card();
    boolean chosen =
        card.heldBack(Allowance.STRAP_STRETCH).filter(h -> h.percent() > 0).isPresent();
    Optional<Figure> leftMm =
        corner.travel().droop().heldBack().map(HeldAtWheel::atStopMm).filter(f -> chosen);
    if (leftMm.isEmpty()) {
      return;
    }
    if (leftMm.get().value() <= 0) {
      found.add(new ThingFirst.StretchUsed(Why.USED_UP, card.corner(), null));
      return;
    }
    StrapStretch stretch = new StrapStretch(card, card.pairings().get(0));
    last(card, TelltaleKind.STRAP_LENGTH)
        .filter(t -> t.content().length() != null && t.content().pull() == null)
        .filter(t -> !readOnTheStrapSince(card, t))
        .filter(t -> stretch.usedUp(t.content().length().mm()))
        .ifPresent(t -> found.add(new ThingFirst.StretchUsed(Why.USED_UP, card.corner(), t)));
  }

  private static boolean readOnTheStrapSince(Card card, Written<Content.Telltale> between) {
    return card.readings().stream()
        .filter(r -> r.of(Quantity.STRAP_LENGTH) && (r.counts() || r.stale()))
        .anyMatch(r -> r.height().name() == HeightName.ON_THE_STRAP && r.n() > between.n());
  }

  // --- between drives

  private void reCheck(Card card) {
    if (reCheck.drive().isEmpty()) {
      return;
    }
    Set<TelltaleKind> unread = EnumSet.of(TelltaleKind.SHOCK_RING, TelltaleKind.TYRE_PRESSURE);
    if (card.adjuster(AdjusterKind.LIMIT_STRAP).isPresent() && !strapReadSince(card)) {
      unread.add(TelltaleKind.STRAP_LENGTH);
    }
    unread.removeIf(kind -> reCheck.read(book, card.corner(), kind).isPresent());
    int marks =
        (int)
            fasteners.stream()
                .filter(f -> f.corner().equals(card.corner()))
                .filter(f -> f.said() != null && !f.open() && !reCheck.since(f.said().n()))
                .count();
    if (!unread.isEmpty() || marks > 0) {
      found.add(new ThingFirst.ReCheckDue(Why.RE_CHECK, card.corner(), unread, marks));
    }
  }

  private boolean strapReadSince(Card card) {
    return card.readings().stream()
        .anyMatch(
            r ->
                r.of(Quantity.STRAP_LENGTH)
                    && r.height().name() == HeightName.ON_THE_STRAP
                    && r.counts()
                    && reCheck.since(r.n()));
  }

  private void fasteners(Card card) {
    fasteners.stream()
        .filter(f -> f.corner().equals(card.corner()) && f.open())
        .forEach(f -> found.add(new ThingFirst.Opened(Why.OPENED, card.corner(), f)));
  }

  private void parts() {
    book.parts().stream()
        .filter(SeenPart::due)
        .map(
            p ->
                new ThingFirst.PartDue(
                    Why.PART_DUE, p.place() == null ? null : p.said().corner(), p))
        .forEach(found::add);
  }

  private void toDos() {
    book.toDos().stream()
        .filter(SeenToDo::open)
        .forEach(
            t ->
                found.add(
                    new ThingFirst.ToDo(
                        Why.TO_DO, t.place() == null ? null : t.toDo().corner(), t)));
  }
}
