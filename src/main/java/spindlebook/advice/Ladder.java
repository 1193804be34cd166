package spindlebook.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import spindlebook.entry.Steering;
import spindlebook.travel.End;
import spindlebook.travel.EndFindings;
import spindlebook.travel.Judged;
import spindlebook.travel.MidTravel;
import spindlebook.travel.Need;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Figure;

/**
 * Tells in which order an end's limits act, the stop among them, and how much wheel travel curing
 * each wins before the next one rules.
 *
 * <pre>
 *   droop:  win_i = P_i − P_(i+1)        bump:  win_i = P_(i+1) − P_i
 *   win_i ≤ U(win_i): nothing, the next acts at the same place
 * </pre>
 *
 * P_i the wheel position (mm, + towards bump) at which rung i acts, counted from mid-travel
 * outwards: L or U for a limit, S − e or B + r for the stop. Everything before a rung is held to be
 * cured: wins add up along the ladder. What two places share (a mark, a tape) cancels.
 *
 * <p>The ends of a solid axle both together and crossed are two motions, each with a stop of its
 * own, and one strap makes both. There each rung is counted from the stop of its own pairing:
 *
 * <pre>
 *   x_i = R_p − P_i (droop)    x_i = P_i − R_p (bump)    win_i = x_(i+1) − x_i
 * </pre>
 *
 * R_p where the stop lets the wheel go in pairing p (mm): x is the room of {@link Judged}, 0 for
 * the stops, less than 0 for what the wheel gets past. Within one pairing this is the same as
 * above. A win is then how much further at the wheel the strap or bump stop could be set, which
 * holds as far as it lets the wheel go by as much in either pairing. The stop's two rungs are cured
 * together. Worked: level tube L 195, stop 200; crossed tank L 190, stop 170, so x 5 and −20; by
 * position alone the tank would lie further out than the tube. The tank comes first and wins 20 up
 * to the stops, these 5 up to the tube.
 *
 * <p>A bracket is planned from its reading that keeps the rule, so its own win is at most, the win
 * up to it at least, what is told. A rule kept at its last reading hides what lies beyond: a win
 * that goes further is told as far as that reading. A term that is missing, or all of whose
 * readings are stale, could act anywhere: no win is told until it is read. A shortfall in
 * mid-travel is no rung, for no end of the motion cures it.
 *
 * <p>Source: derived in docs/methods-travel.md. Worked example (droop, in, nothing doubted): tie
 * rod 11.00, strap S − e 9.00, shaft 8.00, shock 8.00, arm 6.50: curing the tie rod wins 2.00,
 * letting the strap out then 1.00, the shaft nothing (the shock acts there too), both 1.50.
 *
 * @param rungs broken everywhere first, then from mid-travel outwards, those not known last
 * @param midTravel rules broken, or not surely kept, between the ends; their cures are the place
 *     itself, and at full lock the steering stop
 * @param locks what acts at one full lock
 */
public record Ladder(End end, List<Rung> rungs, List<MidTravel> midTravel, List<LockLimits> locks) {
  private static final double TINY_MM = 1e-9;

  /** Of one end of a card's findings. */
  public static Ladder of(TravelFindings travel, End end) {
    EndFindings findings = travel.at(end);
    List<Need> needs = otherNeeds(findings);
    boolean alone = findings.reaches().size() == 1;
    List<Rung> stops =
        findings.reaches().stream()
            .map(r -> alone ? Rungs.stop(r.mm(), needs, "") : axleStop(r))
            .toList();
    List<Rung> limits = findings.limits().stream().map(l -> Rungs.of(end, l, l.reachMm())).toList();
    return of(end, stops, limits, needs, travel.midTravel());
  }

  private static Rung axleStop(EndFindings.Reach reach) {
    return Rungs.stop(reach.mm(), reach.needs(), reach.pairing().words());
  }

  static Ladder of(
      End end, List<Rung> stops, List<Rung> limits, List<Need> needs, List<MidTravel> midTravel) {
    List<Rung> unordered =
        Stream.of(stops, Rungs.neverGiven(needs), limits).flatMap(List::stream).toList();
    List<Rung> rungs = unordered.stream().sorted(inOrderOfActing(end, stops)).toList();
    Ladder bare = new Ladder(end, rungs, midTravel, List.of());
    List<Rung> winning =
        IntStream.range(0, rungs.size()).mapToObj(i -> rungs.get(i).winning(bare.win(i))).toList();
    return new Ladder(end, winning, midTravel, bare.atLocks());
  }

  private static List<Need> otherNeeds(EndFindings end) {
    return end.needs().stream()
        .filter(need -> end.limits().stream().noneMatch(l -> l.needs().contains(need)))
        .toList();
  }

  private static Comparator<Rung> inOrderOfActing(End end, List<Rung> stops) {
    return Comparator.comparingInt(Ladder::group)
        .thenComparingDouble(r -> r.atMm() == null ? 0 : outMm(end, stops, r))
        .thenComparing(r -> !r.acts());
  }

  /** Counted from its own stop on an axle; one that is not known stands where the other does. */
  private static double outMm(End end, List<Rung> stops, Rung rung) {
    Figure fromMm =
        stops.size() == 1
            ? null
            : Stream.concat(Stream.of(rung), stops.stream())
                .map(Rung::reachMm)
                .filter(Objects::nonNull)
                .findFirst()
                .orElse(null);
    return (rung.atMm().value() - (fromMm == null ? 0 : fromMm.value())) * end.outward();
  }

  private static int group(Rung rung) {
    return switch (rung.state()) {
      case EVERYWHERE -> 0;
      case ACTS, BRACKET, KEPT_TO -> 1;
      case NEEDS -> 2;
    };
  }

  private Win win(int i) {
    Rung rung = rungs.get(i);
    return switch (rung.state()) {
      case EVERYWHERE, NEEDS -> new Win.Withheld(null, rung.needs());
      case KEPT_TO -> new Win.NotMet();
      case ACTS, BRACKET -> {
        List<Integer> outwards =
            IntStream.range(i + 1, rungs.size()).filter(j -> rungs.get(j).acts()).boxed().toList();
        yield rung.what() == Rung.What.STOP ? stopWin(i, outwards) : win(i, outwards);
      }
    };
  }

  /** Letting the stop out lets it out in both pairings of an axle. */
  private Win stopWin(int i, List<Integer> outwards) {
    return IntStream.range(0, i)
        .filter(j -> rungs.get(j).what() == Rung.What.STOP && rungs.get(j).acts())
        .mapToObj(j -> (Win) new Win.SameStop(j))
        .findFirst()
        .orElseGet(
            () ->
                win(
                    i,
                    outwards.stream().filter(j -> rungs.get(j).what() != Rung.What.STOP).toList()));
  }

  /** {@code outwards}: those that act further out and are not cured, in order. */
  private Win win(int i, List<Integer> outwards) {
    Rung rung = rungs.get(i);
    Integer next = outwards.isEmpty() ? null : outwards.get(0);
    Figure mm = next == null ? null : outFrom(rung, rungs.get(next));
    List<Need> anywhere = needsOf(r -> r.state() == Rung.State.NEEDS);
    if (!anywhere.isEmpty() || (next != null && mm == null)) {
      return new Win.Withheld(mm, anywhere);
    }
    if (mm != null && mm.value() <= mm.U()) {
      return nothing(i, outwards, mm);
    }
    List<Rung> unread = keptShortOf(next);
    if (!unread.isEmpty()) {
      Figure readMm = outFrom(rung, unread.get(0));
      List<Need> beyond = unread.stream().map(r -> Rungs.readBeyond(end, r)).toList();
      return readMm.value() > readMm.U()
          ? new Win.AsFarAsRead(readMm, beyond)
          : new Win.Withheld(mm, beyond);
    }
    return next == null
        ? new Win.NothingBeyond()
        : new Win.Travel(
            mm,
            next,
            rung.state() == Rung.State.BRACKET,
            rungs.get(next).state() == Rung.State.BRACKET);
  }

  private Win nothing(int i, List<Integer> outwards, Figure apartMm) {
    List<Integer> together = new ArrayList<>(List.of(i));
    for (int j : outwards) {
      Figure apart = outFrom(rungs.get(i), rungs.get(j));
      if (apart.value() > apart.U()) {
        break;
      }
      together.add(j);
    }
    List<Integer> further = outwards.subList(together.size() - 1, outwards.size());
    return new Win.Nothing(apartMm, together, win(i, further));
  }

  /** Rules kept at their last reading, which does not lie as far out as that; nearest first. */
  private List<Rung> keptShortOf(Integer next) {
    return rungs.stream()
        .filter(r -> r.state() == Rung.State.KEPT_TO)
        .filter(r -> next == null || outFrom(r, rungs.get(next)).value() > TINY_MM)
        .toList();
  }

  private List<Need> needsOf(java.util.function.Predicate<Rung> which) {
    return rungs.stream().filter(which).flatMap(r -> r.needs().stream()).distinct().toList();
  }

  /** How much further out one acts than another; null when a stop between pairings is missing. */
  private Figure outFrom(Rung rung, Rung to) {
    if (rung.condition().equals(to.condition())) {
      return Judged.room(end, rung.atMm(), to.atMm());
    }
    Figure from = rung.roomMm(end);
    Figure room = to.roomMm(end);
    return from == null || room == null ? null : room.minus(from);
  }

  private List<LockLimits> atLocks() {
    List<LockLimits> locks = new ArrayList<>();
    for (Steering lock : Steering.values()) {
      List<Integer> there = acting().stream().filter(i -> rungs.get(i).steering() == lock).toList();
      List<MidTravel> mid = midTravel.stream().filter(m -> m.steering() == lock).toList();
      if (lock.full() && !(there.isEmpty() && mid.isEmpty())) {
        locks.add(new LockLimits(lock, there, mid, lessLock(there)));
      }
    }
    return locks;
  }

  private List<Integer> acting() {
    return IntStream.range(0, rungs.size())
        .filter(i -> rungs.get(i).acts() || rungs.get(i).state() == Rung.State.EVERYWHERE)
        .boxed()
        .toList();
  }

  private Win lessLock(List<Integer> there) {
    List<Integer> acting = acting();
    int first = acting.isEmpty() ? -1 : acting.get(0);
    if (!there.contains(first)) {
      return there.isEmpty() ? new Win.NotMet() : new Win.ActsLater(first);
    }
    if (rungs.get(first).state() == Rung.State.EVERYWHERE) {
      return win(first);
    }
    Win win = win(first, acting.stream().filter(j -> !there.contains(j)).toList());
    return win instanceof Win.Travel travel
        ? new Win.Travel(travel.mm(), travel.next(), true, travel.atLeast())
        : win;
  }
}
