package spindlebook.fold;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import spindlebook.definition.CarDetails;
import spindlebook.definition.Layout;
import spindlebook.definition.Place;
import spindlebook.entry.Content;

/**
 * The entries of one car, in the book's order, with its corrections and answers taken in.
 * Immutable: a further entry gives a further book, and what is derived from it is the same whether
 * the entries came one by one or all at once.
 */
public final class CarBook {
  /** So many further entries are copied with each book; then all is put together anew. */
  private static final int FEW = 500;

  private static final CarBook EMPTY = new CarBook(List.of(), new Memo());

  private final List<Noted> entries;
  private final Map<String, Content> written;
  private final Map<String, Content> writtenSince = new HashMap<>();
  private final List<Content.Definition> definitions = new ArrayList<>();
  private final Map<String, Content.Correction> corrected;
  private final Map<String, Boolean> answers;
  private final List<String> corners;
  private final Memo memo = new Memo();
  private final Memo asKnown;
  private final Map<String, CardFold> folds = new ConcurrentHashMap<>();

  private CarBook(List<Noted> entries, Memo asKnown) {
    this.entries = entries;
    this.asKnown = asKnown;
    written = new HashMap<>();
    entries.forEach(e -> written.putIfAbsent(e.key(), e.content()));
    corrected = new HashMap<>();
    takeInCorrections();
    answers = new HashMap<>();
    for (Noted entry : entries) {
      Content content = standing(entry.key()).orElse(null);
      if (content instanceof Content.Answer answer) {
        answers.put(answer.target(), answer.itIsSo());
      } else if (content instanceof Content.Definition definition) {
        definitions.add(definition);
      }
    }
    corners = cornersInOrder();
  }

  /** An earlier book with entries that leave all as it stands there. */
  private CarBook(CarBook earlier, List<Noted> entries, List<Noted> later) {
    this.entries = entries;
    asKnown = earlier.asKnown;
    boolean few = earlier.writtenSince.size() < FEW;
    written = few ? earlier.written : new HashMap<>(earlier.written);
    (few ? writtenSince : written).putAll(earlier.writtenSince);
    definitions.addAll(earlier.definitions);
    for (Noted entry : later) {
      writtenSince.putIfAbsent(entry.key(), entry.content());
      if (entry.content() instanceof Content.Definition definition) {
        definitions.add(definition);
      }
    }
    corrected = earlier.corrected;
    answers = earlier.answers;
    boolean asBefore = later.stream().noneMatch(e -> e.content() instanceof Content.Corner);
    corners = asBefore ? earlier.corners : cornersInOrder();
    if (later.size() == 1) {
      earlier.folds.forEach(
          (corner, fold) ->
              fold.with(later.get(0), this).ifPresent(longer -> folds.put(corner, longer)));
    }
  }

  /**
   * From the last to the first, so that a correction that was itself taken back is known by then.
   */
  private void takeInCorrections() {
    for (int i = entries.size() - 1; i >= 0; i--) {
      if (entries.get(i).content() instanceof Content.Correction
          && standing(entries.get(i).key()).orElse(null) instanceof Content.Correction holds
          && canHold(holds)) {
        corrected.putIfAbsent(holds.target(), holds);
      }
    }
  }

  /**
   * A correction says the same kind of thing anew, or withdraws it; a car and a corner, on which
   * all else hangs, are never withdrawn. The pages offer nothing else; a book by hand may say it.
   */
  private boolean canHold(Content.Correction correction) {
    Content first = original(correction.target()).orElse(null);
    return first == null
        || (correction.body() == null
            ? !(first instanceof Content.Car || first instanceof Content.Corner)
            : first.getClass() == correction.body().getClass());
  }

  public static CarBook empty() {
    return EMPTY;
  }

  public static CarBook of(List<Noted> entries) {
    return of(entries, new Memo());
  }

  /** The same, where {@link #asKnown} of a book that these entries begin with is still there. */
  public static CarBook of(List<Noted> entries, Memo asKnown) {
    return new CarBook(List.copyOf(entries), asKnown);
  }

  public CarBook with(Noted entry) {
    return with(List.of(entry));
  }

  /** With further entries, in the book's order. */
  public CarBook with(List<Noted> later) {
    List<Noted> longer = new ArrayList<>(entries.size() + later.size());
    longer.addAll(entries);
    long n = n();
    for (Noted entry : later) {
      if (entry.n() <= n) {
        throw new IllegalArgumentException("entry " + entry.n() + " comes after entry " + n);
      }
      n = entry.n();
      longer.add(entry);
    }
    if (later.isEmpty()) {
      return this;
    }
    List<Noted> all = Collections.unmodifiableList(longer);
    return later.stream().allMatch(this::leavesAllElse)
        ? new CarBook(this, all, later)
        : new CarBook(all, asKnown);
  }

  private boolean leavesAllElse(Noted later) {
    return !(later.content() instanceof Content.Correction)
        && !(later.content() instanceof Content.Answer)
        && !corrected.containsKey(later.key())
        && !answers.containsKey(later.key())
        && original(later.key()).isEmpty();
  }

  /** As we knew it at n. */
  public CarBook asOf(long n) {
    return n >= n() ? this : of(entries.stream().takeWhile(e -> e.n() <= n).toList());
  }

  public List<Noted> entries() {
    return entries;
  }

  public long n() {
    return entries.isEmpty() ? 0 : entries.get(entries.size() - 1).n();
  }

  /** What stands under a key now: corrected, or empty when it was taken back or never written. */
  public Optional<Content> standing(String key) {
    Content.Correction correction = corrected.get(key);
    return correction == null || original(key).isEmpty()
        ? original(key)
        : Optional.ofNullable(correction.body());
  }

  /** What stands of each entry, in the book's order; null where it was taken back. */
  List<Content> standing() {
    return memo.get(
        "standing", () -> entries.stream().map(e -> standing(e.key()).orElse(null)).toList());
  }

  /** What was written under a key first, before any correction. */
  public Optional<Content> original(String key) {
    Content first = written.get(key);
    return Optional.ofNullable(first == null ? writtenSince.get(key) : first);
  }

  /** Whether an entry was taken back. */
  public boolean takenBack(String key) {
    return original(key).isPresent() && standing(key).isEmpty();
  }

  /** Whether a person may take an entry back, or what was said instead of it or took it back. */
  public boolean withdrawable(String key) {
    Content content = original(key).orElse(null);
    return content instanceof Content.Correction c
        ? original(c.target()).filter(Content::withdrawable).isPresent()
        : content != null && content.withdrawable();
  }

  /** Whether an entry is doubted, answered or not, so that there is something to answer. */
  public boolean doubted(String key) {
    return standing(key).map(Content::doubt).isPresent();
  }

  /** The entry that took it back, which can itself be taken back; empty when none did. */
  public Optional<String> takenBackBy(String key) {
    Content.Correction last = corrected.get(key);
    if (last == null || !takenBack(key)) {
      return Optional.empty();
    }
    return entries.stream()
        .filter(e -> standing(e.key()).filter(c -> c == last).isPresent())
        .map(Noted::key)
        .reduce((first, second) -> second);
  }

  /** How many readings hang on a height and were not taken back themselves. */
  public long readingsOf(String height) {
    return written(Content.Reading.class).stream()
        .filter(r -> r.content().height().equals(height))
        .count();
  }

  /** What somebody answered to the doubt about an entry. */
  public Optional<Boolean> answered(String key) {
    return Optional.ofNullable(answers.get(key));
  }

  /** Whether an entry is in doubt and nobody has answered. */
  boolean waits(Written<?> entry) {
    return entry.content().doubt() != null && answered(entry.key()).isEmpty();
  }

  /** Whether somebody answered that it does not count. */
  boolean refused(Written<?> entry) {
    return answered(entry.key()).map(itIsSo -> !itIsSo).orElse(false);
  }

  /** Neither in doubt nor refused. */
  public boolean counts(Written<?> entry) {
    return !waits(entry) && !refused(entry);
  }

  /** What was defined of the car and its corners and stands, in the book's order. */
  public List<Content.Definition> definitions() {
    return Collections.unmodifiableList(definitions);
  }

  /** The car's details in force; empty in a book without a car. */
  public Optional<CarDetails> details() {
    return memo.get("details", this::lastDetails);
  }

  private Optional<CarDetails> lastDetails() {
    CarDetails details = null;
    for (Noted entry : entries) {
      boolean mayBe =
          entry.content() instanceof Content.Car || entry.content() instanceof Content.Definition;
      Content content = mayBe ? standing(entry.key()).orElse(null) : null;
      if (content instanceof Content.Car car) {
        details = car.details();
      } else if (content instanceof Content.Definition d
          && d.what() instanceof CarDetails changed) {
        details = changed;
      }
    }
    return Optional.ofNullable(details);
  }

  /** The car's key; empty in a book without a car. */
  public Optional<String> car() {
    return entries.stream()
        .filter(e -> e.content() instanceof Content.Car)
        .map(Noted::key)
        .findFirst();
  }

  /** Keys of the corners, left front first. */
  public List<String> corners() {
    return corners;
  }

  private List<String> cornersInOrder() {
    return written(Content.Corner.class).stream()
        .sorted(Comparator.comparing(c -> c.content().place()))
        .map(Written::key)
        .toList();
  }

  public Optional<String> cornerAt(Place place) {
    return corners().stream().filter(c -> placeOf(c).orElseThrow() == place).findFirst();
  }

  /** The card of the corner on the car's other side, where the car has it. */
  public Optional<Card> mirror(Card card) {
    return cornerAt(card.place().mirror()).map(this::card);
  }

  /** The card of the other end of a solid axle; empty for a wheel hung alone. */
  public Optional<Card> otherEnd(Card card) {
    return card.layout() != Layout.SOLID_AXLE_END
        ? Optional.empty()
        : mirror(card).filter(o -> o.layout() == Layout.SOLID_AXLE_END);
  }

  /**
   * One corner's card.
   *
   * @throws IllegalArgumentException when no corner has this key
   */
  public Card card(String corner) {
    return fold(corner).card();
  }

  private CardFold fold(String corner) {
    return folds.computeIfAbsent(corner, c -> new CardFold(this, c));
  }

  /**
   * Why a height or reading would be asked about that is not written yet; empty when it would not.
   *
   * @param after the last change of a setting, or happening, that its writer knows of
   */
  public Optional<String> doubt(String corner, String key, long after, Content content) {
    return fold(corner)
        .doubt(new Noted(n() + 1, key, entries.get(0).at(), "nobody", after, content));
  }

  /** The same of what is said instead of an entry, which does not count against it. */
  public Optional<String> doubtInstead(String corner, String target, long after, Content content) {
    Content none = new Content.Correction(target, null, "");
    return with(new Noted(n() + 1, "", entries.get(0).at(), "nobody", after, none))
        .doubt(corner, target + "-", after, content);
  }

  /** What was worked out from this book. */
  public Memo memo() {
    return memo;
  }

  /** What was known after its entries, which no later one changes; kept by every longer book. */
  public Memo asKnown() {
    return asKnown;
  }

  /** The corner's place; empty when the key is no corner's. */
  public Optional<Place> placeOf(String corner) {
    return corner == null
        ? Optional.empty()
        : standing(corner, Content.Corner.class).map(Content.Corner::place);
  }

  /** What is to do and what was done, in the book's order. */
  public List<SeenToDo> toDos() {
    return memo.get("toDos", () -> SeenToDo.in(this));
  }

  /** Fasteners of everything with a thread that is set, corner by corner. */
  public List<SeenFastener> fasteners() {
    return memo.get("fasteners", () -> new Fasteners(this).fold());
  }

  /** The parts that are on the car now. */
  public List<SeenPart> parts() {
    return memo.get("parts", () -> SeenPart.in(this));
  }

  /** Every drive, in the book's order. */
  public List<SeenUse> uses() {
    return memo.get("uses", () -> SeenUse.in(this));
  }

  public Optional<SeenUse> lastUse() {
    return uses().stream().reduce((earlier, later) -> later);
  }

  /** What drives left to be read, in the book's order. */
  public List<Written<Content.Telltale>> telltales() {
    return memo.get("telltales", () -> written(Content.Telltale.class));
  }

  public List<Written<Content.Photo>> photos() {
    return memo.get("photos", () -> written(Content.Photo.class));
  }

  /** What stands of one kind, in the book's order; a correction never makes it another. */
  public <C extends Content> List<Written<C>> written(Class<C> kind) {
    return entries.stream()
        .filter(e -> kind.isInstance(e.content()))
        .flatMap(e -> standing(e.key(), kind).map(c -> new Written<>(e, c)).stream())
        .toList();
  }

  /** What stands under a key, where it is of this kind. */
  public <C extends Content> Optional<C> standing(String key, Class<C> kind) {
    return standing(key).filter(kind::isInstance).map(kind::cast);
  }

  /** Every sign-off of the car, in the book's order, those taken back as well. */
  public List<SeenSignOff> signOffs() {
    return memo.get("signOffs", () -> SeenSignOff.in(this));
  }

  /** The last one that was not taken back. */
  public Optional<SeenSignOff> lastSignOff() {
    return signOffs().stream().filter(s -> !s.takenBack()).reduce((earlier, later) -> later);
  }
}
