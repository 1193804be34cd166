package spindlebook.fold;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import spindlebook.definition.AdjusterKind;
import spindlebook.definition.BumpStop;
import spindlebook.definition.CornerWeight;
import spindlebook.definition.Defined;
import spindlebook.definition.Dimension;
import spindlebook.definition.Place;
import spindlebook.definition.Spring;
import spindlebook.definition.Starter;
import spindlebook.definition.Tool;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.UseUnit;
import spindlebook.uncertainty.Figure;

/**
 * What carries a corner and what ends its motion, as its owner gave it; and how long its strap was.
 *
 * @param pressedMm how much further the spring is pressed together than was said, for what its
 *     collar was turned since
 * @param stops in the order in which they came into the book
 * @param rideMoved empty where ride holds as it was read, or something but springs moved it
 */
public record SeenSprings(
    Optional<Said<Spring>> spring,
    double pressedMm,
    Optional<Said<CornerWeight>> weight,
    List<Said<BumpStop>> stops,
    Strap strap,
    Optional<RideMoved> rideMoved) {

  /** The last that was said of a part, and what that is worth now. */
  public record Said<T>(T what, String key, Standing stands, List<Change> because) {}

  /**
   * The strap that is fitted now, as it was measured under one pull.
   *
   * @param read in the book's order; none where nobody measured it under a stated pull
   * @param unit in which its use is counted; null where nobody said any
   * @param counted whether every drive since it was new said how much, and in that unit
   */
  public record Strap(List<StrapRead> read, UseUnit unit, boolean counted) {}

  /** How long it was under its pull after so much use. */
  public record StrapRead(String key, double use, Figure lengthMm, double pullN) {}

  /**
   * Ride as it was last read, which collars or other springs moved since.
   *
   * @param readMm wheel position
   * @param pressedMm how much further each corner's spring is pressed together since
   * @param swapped where another spring was fitted since, and the entry up to which the one before
   *     stood as ride was read on it
   */
  public record RideMoved(Figure readMm, Map<Place, Double> pressedMm, Map<Place, Long> swapped) {}

  public SeenSprings {
    stops = List.copyOf(stops);
  }

  /** Whether anything was said. */
  public boolean any() {
    return spring.isPresent() || weight.isPresent() || !stops.isEmpty() || !strap.read().isEmpty();
  }

  /** Gathers it for one corner, in the book's order. Used once and thrown away. */
  static final class Fold {
    /** Closer than a scale tells a pull: common practice, no source. */
    private static final double SAME_PULL = 0.01;

    private static final Subject OF_SPRING = new Subject.OfPart(AdjusterKind.SPRING);

    private record Drive(long n, long after, Content.Use use) {}

    private final CarBook book;
    private Written<Content.Definition> spring;
    private Said<CornerWeight> weight;
    private final Map<String, Written<Content.Definition>> stops = new LinkedHashMap<>();
    private final List<Written<Content.Telltale>> read = new ArrayList<>();
    private final List<Drive> drives = new ArrayList<>();
    private Written<Content.Part> strap;

    Fold(CarBook book) {
      this.book = book;
    }

    void take(Noted entry, Content.Definition d) {
      Written<Content.Definition> raw = new Written<>(entry, d);
      if (d.what() instanceof Spring) {
        spring = raw;
      } else if (d.what() instanceof CornerWeight w) {
        weight = new Said<>(w, entry.key(), Standing.LIVE, List.of());
      } else if (d.what() instanceof BumpStop stop) {
        stops.put(stop.stop(), raw);
      }
    }

    /** A strap's length under a stated pull. */
    void take(Noted entry, Content.Telltale strapLength) {
      read.add(new Written<>(entry, strapLength));
    }

    /** A drive; null where nobody said how much. */
    void drive(Noted entry, Content.Use use) {
      drives.add(new Drive(entry.n(), entry.after(), use));
    }

    /** A strap that was fitted. */
    void take(Noted entry, Content.Part fitted) {
      strap = new Written<>(entry, fitted);
    }

    SeenSprings see(
        Place place, Settings settings, AlignmentFold.Tools tools, List<SeenHeight> heights) {
      return new SeenSprings(
          Optional.ofNullable(spring).map(s -> said(s, Spring.class, OF_SPRING, place, settings)),
          spring == null ? 0 : settings.movedMm(place, spring.after(), OF_SPRING),
          Optional.ofNullable(weight),
          stops.values().stream().map(s -> stop(s, place, settings)).toList(),
          strap(place, settings, tools.named(Starter.tape().tool(), Starter.tape())),
          rideMoved(settings, heights));
    }

    private static Optional<RideMoved> rideMoved(Settings settings, List<SeenHeight> heights) {
      SeenHeight ride =
          heights.stream()
              .filter(h -> h.name() == HeightName.RIDE && h.stop() != Standing.REPLACED)
              .reduce((earlier, later) -> later)
              .orElse(null);
      if (ride == null || ride.stop() != Standing.STALE || ride.positionMm() == null) {
        return Optional.empty();
      }
      boolean springs = bySprings(ride.because(), settings);
      Map<Place, Double> pressed = new EnumMap<>(Place.class);
      Map<Place, Long> swapped = new EnumMap<>(Place.class);
      for (Place place : Place.values()) {
        Settings.Verdict verdict = settings.judge(place, ride.entry().after(), OF_SPRING);
        if (verdict.stands() == Standing.STALE) {
          List<Change> since = verdict.because();
          boolean turned =
              since.stream()
                  .anyMatch(c -> settings.kind(place, c.adjuster()) == AdjusterKind.SPRING_PRELOAD);
          swapped.put(
              place,
              turned ? ride.entry().n() : since.stream().mapToLong(Change::n).min().orElse(0) - 1);
        }
        springs &= verdict.stands() != Standing.PUT_BACK && bySprings(verdict.because(), settings);
        pressed.put(place, settings.movedMm(place, ride.entry().after(), OF_SPRING));
      }
      return springs
          ? Optional.of(new RideMoved(ride.positionMm(), pressed, swapped))
          : Optional.empty();
    }

    private static boolean bySprings(List<Change> changes, Settings settings) {
      return changes.stream()
          .map(c -> settings.kind(c.place(), c.adjuster()))
          .allMatch(k -> k == AdjusterKind.SPRING_PRELOAD || k == AdjusterKind.SPRING);
    }

    /** Another stop fitted has another chart; a spacer moves only where it is first touched. */
    private Said<BumpStop> stop(Written<Content.Definition> raw, Place place, Settings settings) {
      Subject of = new Subject.OfPart(AdjusterKind.BUMP_STOP_SPACER);
      Said<BumpStop> said = said(raw, BumpStop.class, of, place, settings);
      boolean another =
          said.because().stream()
              .anyMatch(c -> book.standing(c.key(), Content.Part.class).isPresent());
      return said.stands().counts() || another
          ? said
          : new Said<>(said.what().touchedElsewhere(), said.key(), Standing.LIVE, List.of());
    }

    private static <T extends Defined> Said<T> said(
        Written<Content.Definition> raw,
        Class<T> kind,
        Subject of,
        Place place,
        Settings settings) {
      Settings.Verdict verdict = settings.judge(place, raw.after(), of);
      return new Said<>(
          kind.cast(raw.content().what()), raw.key(), verdict.stands(), verdict.because());
    }

    /**
     * Under the pull of the last reading, since it was last set or another was fitted; its use goes
     * on when it is set. Who did not know of the new one read the old.
     */
    private Strap strap(Place place, Settings settings, Tool tape) {
      Content.Part part = strap == null ? null : strap.content();
      long fitted = strap == null ? 0 : strap.n();
      double before = part == null || part.usedBefore() == null ? 0 : part.usedBefore();
      List<Drive> since = drives.stream().filter(d -> d.after() >= fitted).toList();
      UseUnit unit =
          since.stream()
              .filter(d -> d.use() != null)
              .map(d -> d.use().unit())
              .findFirst()
              .orElse(part == null ? null : part.unit());
      boolean counted =
          since.stream().allMatch(d -> d.use() != null && d.use().unit() == unit)
              && (before == 0 || part.unit() == unit);
      if (read.isEmpty()) {
        return new Strap(List.of(), unit, counted);
      }
      long set = settings.era(place, book.n(), new Subject.GivenLength(Dimension.NEW_STRAP_LENGTH));
      double pullN = read.get(read.size() - 1).content().pull().si(false);
      List<StrapRead> seen = new ArrayList<>();
      double use = before;
      int driven = 0;
      for (Written<Content.Telltale> raw : read) {
        while (driven < since.size() && since.get(driven).n() < raw.n()) {
          Content.Use drive = since.get(driven++).use();
          use += drive == null || drive.unit() != unit ? 0 : drive.amount();
        }
        double off = raw.content().pull().si(false) / pullN - 1;
        if (raw.after() >= set && Math.abs(off) <= SAME_PULL) {
          Figure length =
              ToolError.ofLengths(tape).read(raw.content().length().mm(), raw.key(), raw.key());
          seen.add(new StrapRead(raw.key(), use, length, pullN));
        }
      }
      return new Strap(List.copyOf(seen), unit, counted);
    }
  }
}
