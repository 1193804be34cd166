package spindlebook.corner;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.Shown;
import spindlebook.card.TravelWords;
import spindlebook.definition.WatchPoint;
import spindlebook.drawing.Lengths;
import spindlebook.drawing.State;
import spindlebook.drawing.Steer;
import spindlebook.drawing.TapeFace;
import spindlebook.entry.GapResult;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.fold.SeenHeight;
import spindlebook.fold.SeenReading;
import spindlebook.fold.Standing;
import spindlebook.travel.Limit;
import spindlebook.travel.TravelFindings;
import spindlebook.uncertainty.Outcome;
import spindlebook.units.AngleFormat;
import spindlebook.units.LengthUnit;
import spindlebook.units.TapeFormat;

/**
 * The clearance map of a corner: watch points down, heights across from droop to bump, the worst
 * lock in the cell. Readings of one place are one column, the last of each lock counts. What lies
 * beyond a stop is no alarm.
 *
 * @param face the lying tape above it; null where no position is known
 */
public record GapMap(TapeFace face, List<Column> columns, List<Row> rows) {
  /** As far as two heights in between are one place. */
  private static final double ONE_PLACE_MM = 12.7;

  private static final int MOST_COLUMNS = 7;
  private static final int SIXTY_FOURTHS = 64;

  private static final List<State> WORST_FIRST =
      List.of(
          State.SHORT,
          State.CANT_TELL,
          State.IN_DOUBT,
          State.STALE,
          State.PUT_BACK,
          State.WORKED_OUT,
          State.LIVE,
          State.CLEAR,
          State.NOT_MEASURED);

  /**
   * A height.
   *
   * @param word short, "strap", "−4"
   * @param percent where its cells' middle is, of the width
   * @param at where it lies on the tape, percent; null where its position is not known
   * @param beyond past where the stop lets the wheel go, stretch and impact counted
   * @param edge whether a stop stands between it and the next one
   */
  public record Column(String word, double percent, Double at, boolean beyond, boolean edge) {
    /** As it stands over its cells, where "past, crossed" has no room. */
    public String head() {
      return word.replace(", crossed", "×");
    }
  }

  /**
   * A watch point.
   *
   * @param sub the second half of its name; may be empty
   * @param worst the worst that counts, of its cells and where its rule stops the wheel
   * @param broken from where on it is broken, in words; else empty
   * @param keep its rule in words
   * @param href where its readings are told; null where it is only to look at
   */
  public record Row(
      String name,
      String sub,
      State worst,
      List<Cell> cells,
      List<Lock> locks,
      String broken,
      String keep,
      String readings,
      String href) {}

  /**
   * A height.
   *
   * @param state of its worst lock
   * @param locks of each lock, where there is room for all of them
   */
  public record Cell(State state, List<State> locks, Column column) {}

  /** One lock's values, a height each. */
  public record Lock(String word, Steer steer, List<Value> values) {}

  /**
   * @param worst whether it is the one its cell shows
   */
  public record Value(String text, State state, boolean worst, Column column) {}

  /**
   * Heights that are one place.
   *
   * @param beyond where they were read, past a stop
   */
  private record Site(HeightName name, Pairing pairing, boolean beyond, List<SeenHeight> heights) {
    Optional<Double> mm() {
      return heights.stream()
          .filter(SeenHeight::positionCounts)
          .reduce((a, b) -> b)
          .map(h -> h.positionMm().value());
    }

    boolean takes(SeenHeight height, boolean beyondToo) {
      boolean replaced = height.stop() == Standing.REPLACED;
      boolean named = height.name() == name || (replaced && name == HeightName.IN_BETWEEN);
      if (!named || height.pairing() != pairing) {
        return false;
      }
      return (name.onePlace() && !replaced)
          || (beyond == beyondToo
              && height.positionCounts()
              && mm().filter(mm -> Math.abs(mm - height.positionMm().value()) < ONE_PLACE_MM)
                  .isPresent());
    }
  }

  /** Sites under one column: so many heights in between as a phone is wide. */
  private record Group(List<Site> sites) {
    Optional<Double> mm() {
      return named().or(() -> sites.stream().findFirst()).flatMap(Site::mm);
    }

    Optional<Site> named() {
      return sites.stream().filter(s -> s.name().onePlace()).findFirst();
    }

    boolean mayTake(Group other) {
      return mm().isPresent()
          && other.mm().isPresent()
          && (named().isEmpty() || other.named().isEmpty())
          && sites.get(0).beyond() == other.sites.get(0).beyond()
          && sites.get(0).pairing() == other.sites.get(0).pairing();
    }

    static List<Group> of(List<Site> sites) {
      List<Group> groups = new ArrayList<>();
      sites.forEach(s -> groups.add(new Group(List.of(s))));
      while (groups.size() > MOST_COLUMNS) {
        int nearest = -1;
        double apart = Double.POSITIVE_INFINITY;
        for (int i = 0; i + 1 < groups.size(); i++) {
          if (groups.get(i).mayTake(groups.get(i + 1))) {
            double between =
                groups.get(i + 1).mm().orElseThrow() - groups.get(i).mm().orElseThrow();
            if (between < apart) {
              apart = between;
              nearest = i;
            }
          }
        }
        if (nearest < 0) {
          break;
        }
        List<Site> both = new ArrayList<>(groups.get(nearest).sites());
        both.addAll(groups.remove(nearest + 1).sites());
        groups.set(nearest, new Group(both));
      }
      return groups;
    }
  }

  static GapMap of(Card card, TravelFindings travel, TravelWords words, boolean toLookAt) {
    List<Group> sites = Group.of(sites(card, travel));
    TapeFace face = CornerFace.of(card, travel, words, false, 280, 24).orElse(null);
    List<Column> columns = new ArrayList<>();
    for (int i = 0; i < sites.size(); i++) {
      Double mm = sites.get(i).mm().orElse(null);
      boolean beyond = beyond(travel, mm);
      boolean next = i + 1 < sites.size() && beyond(travel, sites.get(i + 1).mm().orElse(null));
      columns.add(
          new Column(
              word(sites.get(i), words),
              100 * (i + 0.5) / sites.size(),
              mm == null || face == null
                  ? null
                  : face.at(words.zero().from(mm)) / face.along() * 100,
              beyond,
              i + 1 < sites.size() && beyond != next));
    }
    List<Row> rows = new ArrayList<>();
    for (WatchPoint point : card.watchPoints()) {
      rows.add(row(card, travel, words, point, sites, columns, toLookAt));
    }
    rows.removeIf(r -> r.locks().isEmpty());
    rows.sort(Comparator.comparingInt(r -> WORST_FIRST.indexOf(r.worst())));
    return new GapMap(face, columns, rows);
  }

  /** The first, where it is broken or cannot be told. */
  public boolean open(Row row) {
    return row.equals(rows.get(0))
        && (row.worst() == State.SHORT || row.worst() == State.CANT_TELL);
  }

  /** Whether a column lies past a stop, for the key. */
  public boolean beyond() {
    return columns.stream().anyMatch(Column::beyond);
  }

  /** What the short words of its columns stand for, for the key. */
  public List<String> words() {
    return Stream.of(
            "off: strap off",
            "touch: stop just touches",
            "bump: stop solid",
            "past: bump stop out",
            "×: crossed")
        .filter(w -> columns.stream().anyMatch(c -> c.head().contains(w.split(":")[0])))
        .toList();
  }

  /** Those that its cells show, for the key. */
  public List<State> states() {
    return WORST_FIRST.stream()
        .filter(
            s ->
                s != State.NOT_MEASURED
                    && rows.stream().flatMap(r -> r.cells().stream()).anyMatch(c -> c.state() == s))
        .toList();
  }

  private static List<Site> sites(Card card, TravelFindings travel) {
    List<Site> sites = new ArrayList<>();
    // What was read where a stop stood once counts there still: where the stop stands comes first.
    for (boolean replaced : new boolean[] {false, true}) {
      for (SeenHeight height : card.heights()) {
        boolean shown =
            card.readingsAt(height.key()).stream()
                .anyMatch(r -> r.point() != null && (!replaced || r.counts()));
        if (!shown || (height.stop() == Standing.REPLACED) != replaced) {
          continue;
        }
        HeightName name = replaced ? HeightName.IN_BETWEEN : height.name();
        boolean beyond = height.positionCounts() && travel.outOfReach(height.positionMm().value());
        List<SeenHeight> heights =
            sites.stream()
                .filter(s -> s.takes(height, beyond))
                .findFirst()
                .orElseGet(
                    () -> {
                      Site site = new Site(name, height.pairing(), beyond, new ArrayList<>());
                      sites.add(site);
                      return site;
                    })
                .heights();
        heights.add(height);
        heights.sort(Comparator.comparingLong(SeenHeight::n));
      }
    }
    sites.sort(Comparator.comparingDouble(s -> s.mm().orElse(Double.NEGATIVE_INFINITY)));
    return sites;
  }

  private static String word(Group group, TravelWords words) {
    Site site = group.named().orElseGet(() -> group.sites().get(0));
    String word =
        switch (site.name()) {
          case STRAP_OFF -> "off";
          case ON_THE_STRAP -> "strap";
          case RIDE -> "ride";
          case STOP_TOUCH -> "touch";
          case FULL_BUMP -> "bump";
          case STOP_OUT -> "past";
          case IN_BETWEEN ->
              site.mm().map(mm -> near(words.lengths(), words.zero().from(mm))).orElse("?");
        };
    return site.pairing() == Pairing.CROSSED ? word + ", crossed" : word;
  }

  /** A sixteenth has no room. */
  private static String near(Lengths lengths, double mm) {
    return Lengths.signed(lengths.about(mm, 4)).replace('-', '−');
  }

  private static boolean beyond(TravelFindings travel, Double mm) {
    return mm != null && travel.outOfReach(mm);
  }

  private static Row row(
      Card card,
      TravelFindings travel,
      TravelWords words,
      WatchPoint point,
      List<Group> sites,
      List<Column> columns,
      boolean toLookAt) {
    List<Cell> cells = new ArrayList<>();
    List<List<SeenReading>> last = new ArrayList<>();
    List<Steering> steerings =
        card.layout().steered()
            ? List.of(Steering.FULL_LEFT, Steering.STRAIGHT, Steering.FULL_RIGHT)
            : List.of(Steering.STRAIGHT);
    Optional<Limit> broken =
        Stream.of(travel.droop(), travel.bump())
            .flatMap(e -> e.limits().stream())
            .filter(l -> l.outcome() == Outcome.SHORT && point.equals(l.point()))
            .findFirst();
    State worst = broken.isPresent() ? State.SHORT : State.NOT_MEASURED;
    for (int i = 0; i < sites.size(); i++) {
      List<SeenReading> of = new ArrayList<>();
      for (Steering steering : steerings) {
        of.add(worst(card, point, sites.get(i), steering));
      }
      List<State> states =
          of.stream().map(r -> r == null ? State.NOT_MEASURED : Shown.state(r)).toList();
      State state =
          states.stream().min(Comparator.comparingInt(WORST_FIRST::indexOf)).orElseThrow();
      Column at = columns.get(i);
      boolean next =
          (i > 0 && !columns.get(i - 1).beyond())
              || (i + 1 < sites.size() && !columns.get(i + 1).beyond());
      if (broken.isPresent() && state == State.SHORT && at.beyond() && next) {
        // The rule is broken on the way there.
        at = new Column(at.word(), at.percent(), at.at(), false, at.edge());
      }
      cells.add(new Cell(state, states, at));
      last.add(of);
      if (!columns.get(i).beyond() && WORST_FIRST.indexOf(state) < WORST_FIRST.indexOf(worst)) {
        worst = state;
      }
    }
    List<Lock> locks = new ArrayList<>();
    for (int s = 0; s < steerings.size(); s++) {
      List<Value> values = new ArrayList<>();
      for (int i = 0; i < sites.size(); i++) {
        SeenReading r = last.get(i).get(s);
        State state = r == null ? State.NOT_MEASURED : Shown.state(r);
        values.add(
            new Value(
                text(r, words),
                state,
                r != null
                    && state == cells.get(i).state()
                    && state != State.CLEAR
                    && state != State.LIVE,
                cells.get(i).column()));
      }
      if (values.stream().anyMatch(v -> !v.text().isEmpty())) {
        locks.add(
            steerings.size() == 1
                ? new Lock("", null, values)
                : new Lock(List.of("left", "straight", "right").get(s), Steer.values()[s], values));
      }
    }
    String[] name = parts(point.name());
    return new Row(
        name[0],
        name[1],
        worst,
        cells,
        locks,
        broken.map(words::broken).orElse(""),
        point.keep().inWords(l -> words.lengths().text(l.mm())),
        Counted.of(
            (int)
                card.readingsOf(point.point()).stream()
                    .filter(r -> r.stands() != Standing.REPLACED)
                    .count(),
            "reading"),
        toLookAt ? null : "/corners/" + card.corner() + "/curves?of=p-" + point.point());
  }

  /** "Tie rod" and "to upper arm". */
  private static String[] parts(String name) {
    int at = name.indexOf(" to ");
    return at < 0
        ? new String[] {Capital.of(name), ""}
        : new String[] {Capital.of(name.substring(0, at)), name.substring(at + 1)};
  }

  /** To the 64th: a drill tells 15/64 from the 1/4 that must be kept. */
  private static String gap(TravelWords words, double mm) {
    return words.lengths().unit() == LengthUnit.INCH
        ? TapeFormat.inches(mm, SIXTY_FOURTHS)
        : words.lengths().bare(mm);
  }

  /** The worst of all heights in a column. */
  private static SeenReading worst(Card card, WatchPoint point, Group group, Steering steering) {
    return group.sites().stream()
        .flatMap(s -> read(card, point, s, steering))
        .min(
            Comparator.comparingInt((SeenReading r) -> WORST_FIRST.indexOf(Shown.state(r)))
                .thenComparing(GapMap::left))
        .orElse(null);
  }

  /**
   * A stop is read again at one place; elsewhere each height is a place of its own. Those that
   * still hold before those that do not.
   */
  private static Stream<SeenReading> read(
      Card card, WatchPoint point, Site site, Steering steering) {
    List<SeenReading> read =
        (site.name().onePlace() ? Stream.of(site.heights()) : site.heights().stream().map(List::of))
            .flatMap(heights -> Stream.ofNullable(last(card, point, heights, steering)))
            .toList();
    boolean any = read.stream().anyMatch(SeenReading::counts);
    return read.stream().filter(r -> !any || r.counts());
  }

  /** Less is worse; nothing where it touches, all where it is well clear. */
  private static double left(SeenReading r) {
    return r.value() == null
        ? (Shown.state(r) == State.SHORT ? -1 : 1) * Double.MAX_VALUE
        : r.reading().angle() == null ? r.value().value() : -r.value().value();
  }

  /** The last one; one that still holds before one that does not. */
  private static SeenReading last(
      Card card, WatchPoint point, List<SeenHeight> heights, Steering steering) {
    SeenReading last = null;
    for (SeenHeight height : heights) {
      for (SeenReading r : card.readingsAt(height.key())) {
        if (r.of(point.point())
            && r.reading().steering() == steering
            && r.stands() != Standing.REPLACED
            && (last == null || r.counts() || !last.counts())) {
          last = r;
        }
      }
    }
    return last;
  }

  private static String text(SeenReading r, TravelWords words) {
    if (r == null) {
      return "";
    }
    if (r.reading().result() == GapResult.NUMBER && r.value() != null) {
      return r.reading().angle() != null
          ? AngleFormat.degrees(r.value().value(), 1)
          : gap(words, r.value().value());
    }
    // A cell is as wide as a fraction on a phone.
    return switch (r.reading().result()) {
      case GO_NO_GO ->
          r.reading().go() != null
              ? "goes " + gap(words, r.reading().go().mm())
              : "not " + gap(words, r.reading().noGo().mm());
      case TOUCHES -> "touch";
      default -> r.reading().result().words();
    };
  }
}
