package spindlebook.corner;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The entries of one car, in the book's order, with its corrections and answers taken in.
 * Immutable: a further entry gives a further book, and what is derived from it is the same whether
 * the entries came one by one or all at once.
 */
public final class CarBook {
  private static final CarBook EMPTY = new CarBook(List.of());

  private final List<Noted> entries;
  private final Map<String, Content> standing = new HashMap<>();
  private final Set<String> takenBack = new HashSet<>();
  private final Map<String, Boolean> answers = new HashMap<>();

  private CarBook(List<Noted> entries) {
    this.entries = entries;
    for (Noted entry : entries) {
      if (entry.content() instanceof Content.Correction correction) {
        takeIn(correction);
      } else if (entry.content() instanceof Content.Answer answer) {
        answers.put(answer.target(), answer.itIsSo());
      } else {
        standing.putIfAbsent(entry.key(), entry.content());
      }
    }
  }

  private void takeIn(Content.Correction correction) {
    if (correction.body() == null) {
      takenBack.add(correction.target());
    } else {
      takenBack.remove(correction.target());
      standing.put(correction.target(), correction.body());
    }
  }

  public static CarBook empty() {
    return EMPTY;
  }

  public static CarBook of(List<Noted> entries) {
    return new CarBook(List.copyOf(entries));
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
    return later.isEmpty() ? this : new CarBook(List.copyOf(longer));
  }

  /** As we knew it at n. */
  public CarBook asOf(long n) {
    return new CarBook(entries.stream().filter(e -> e.n() <= n).toList());
  }

  public List<Noted> entries() {
    return entries;
  }

  public long n() {
    return entries.isEmpty() ? 0 : entries.get(entries.size() - 1).n();
  }

  /** What stands under a key now: corrected, or empty when it was taken back or never written. */
  public Optional<Content> standing(String key) {
    return takenBack.contains(key) ? Optional.empty() : Optional.ofNullable(standing.get(key));
  }

  /** What was written under a key first, before any correction. */
  public Optional<Content> original(String key) {
    return entries.stream().filter(e -> e.key().equals(key)).map(Noted::content).findFirst();
  }

  /** Whether an entry was taken back. */
  public boolean takenBack(String key) {
    return takenBack.contains(key);
  }

  /** What somebody answered to the doubt about an entry. */
  public Optional<Boolean> answered(String key) {
    return Optional.ofNullable(answers.get(key));
  }

  /** The car's details in force; empty in a book without a car. */
  public Optional<CarDetails> details() {
    CarDetails details = null;
    for (Noted entry : entries) {
      Content content = standing(entry.key()).orElse(null);
      if (content instanceof Content.Car car) {
        details = car.details();
      } else if (content instanceof Content.Definition d && d.details() != null) {
        details = d.details();
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
    record Found(String key, Place place) {}

    List<Found> found = new ArrayList<>();
    for (Noted entry : entries) {
      if (entry.content() instanceof Content.Corner
          && standing(entry.key()).orElse(null) instanceof Content.Corner corner) {
        found.add(new Found(entry.key(), corner.place()));
      }
    }
    return found.stream()
        .sorted(java.util.Comparator.comparing(Found::place))
        .map(Found::key)
        .toList();
  }

  public Optional<String> cornerAt(Place place) {
    return corners().stream()
        .filter(c -> ((Content.Corner) standing(c).orElseThrow()).place() == place)
        .findFirst();
  }

  /**
   * One corner's card.
   *
   * @throws IllegalArgumentException when no corner has this key
   */
  public Card card(String corner) {
    return new CardFold(this, corner).card();
  }
}
