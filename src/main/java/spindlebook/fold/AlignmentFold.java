package spindlebook.fold;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.definition.Place;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.entry.AlignedFigure;
import spindlebook.entry.AlignedThing;
import spindlebook.entry.Content;

/**
 * Folds what was measured of alignment, and its targets, for one corner. What belongs to the axle
 * is taken from either of its corners. Used once and thrown away.
 */
final class AlignmentFold {
  /** The tool an entry names, as the card knows it now. */
  interface Tools {
    Tool named(String tool, Tool otherwise);
  }

  private record Taken(Written<Content.Alignment> raw, Place place) {}

  private final Place corner;
  private final CarBook book;
  private final List<Taken> taken = new ArrayList<>();
  private final Map<AlignedFigure, Written<Content.Target>> targets = new LinkedHashMap<>();

  AlignmentFold(Place corner, CarBook book) {
    this.corner = corner;
    this.book = book;
  }

  void take(Noted entry, Content.Alignment alignment) {
    book.placeOf(alignment.corner())
        .filter(place -> here(place, alignment.way().thing().ofAxle()))
        .ifPresent(place -> taken.add(new Taken(new Written<>(entry, alignment), place)));
  }

  void take(Noted entry, Content.Target target) {
    AlignedFigure figure = target.figure();
    if (book.placeOf(target.corner()).filter(p -> here(p, figure.thing().ofAxle())).isPresent()) {
      targets.remove(figure);
      if (target.asks()) {
        targets.put(figure, new Written<>(entry, target));
      }
    }
  }

  private boolean here(Place place, boolean ofAxle) {
    return place == corner || (ofAxle && place == corner.mirror());
  }

  /** Those that wait for an answer, written down at this corner. */
  List<Written<Content.Alignment>> doubted() {
    return taken.stream()
        .filter(t -> t.place() == corner && !book.refused(t.raw()) && book.waits(t.raw()))
        .map(Taken::raw)
        .toList();
  }

  Aligned see(Settings settings, Tools tools) {
    List<SeenAlignment> seen = new ArrayList<>();
    // Those a later measurement of the same thing may stand for, by what had moved it before them.
    Map<AlignedThing, Map<Long, List<Integer>>> loose = new EnumMap<>(AlignedThing.class);
    for (Taken one : taken) {
      if (!book.refused(one.raw())) {
        SeenAlignment later = see(one, settings, tools);
        Map<Long, List<Integer>> same = loose.computeIfAbsent(later.thing(), t -> new HashMap<>());
        long moved = moved(one, settings);
        if (later.counts()) {
          same.forEach(
              (before, all) -> {
                if (before != moved) {
                  all.forEach(i -> seen.set(i, seen.get(i).replaced()));
                }
              });
          same.keySet().retainAll(Set.of(moved));
        }
        if (later.stands() == Standing.STALE || later.stands() == Standing.PUT_BACK) {
          long before = later.counts() ? moved : Spots.ANY;
          same.computeIfAbsent(before, m -> new ArrayList<>()).add(seen.size());
        }
        seen.add(later);
      }
    }
    return new Aligned(seen, List.copyOf(targets.values()));
  }

  private SeenAlignment see(Taken one, Settings settings, Tools tools) {
    Content.Alignment a = one.raw().content();
    Settings.Verdict verdict = judge(one, settings);
    return new SeenAlignment(
        one.raw().entry(),
        a,
        one.place(),
        tools.named(a.lengthTool(), Starter.tape()),
        tools.named(a.angleTool(), Starter.angleFinder()),
        tools.named(a.lockTool(), Starter.turnPlates()),
        book.waits(one.raw()) ? Standing.IN_DOUBT : verdict.stands(),
        verdict.because());
  }

  private long moved(Taken one, Settings settings) {
    AlignedThing thing = one.raw().content().way().thing();
    Subject subject = new Subject.Alignment(thing);
    long here = settings.era(corner, one.raw().after(), subject);
    return thing.ofAxle()
        ? Math.max(here, settings.era(corner.mirror(), one.raw().after(), subject))
        : here;
  }

  /** What belongs to the axle is moved by what moves it at either wheel. */
  private Settings.Verdict judge(Taken one, Settings settings) {
    AlignedThing thing = one.raw().content().way().thing();
    Subject subject = new Subject.Alignment(thing);
    long after = one.raw().after();
    Settings.Verdict here = settings.judge(corner, after, subject);
    if (!thing.ofAxle()) {
      return here;
    }
    Settings.Verdict there = settings.judge(corner.mirror(), after, subject);
    Standing worse =
        Stream.of(Standing.STALE, Standing.PUT_BACK)
            .filter(s -> here.stands() == s || there.stands() == s)
            .findFirst()
            .orElse(Standing.LIVE);
    return new Settings.Verdict(
        worse,
        Stream.concat(here.because().stream(), there.because().stream()).distinct().toList());
  }
}
