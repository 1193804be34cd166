package spindlebook.card;

import java.util.List;
import spindlebook.advice.NextReading;
import spindlebook.entry.Content.ToRead;
import spindlebook.page.Posted;
import spindlebook.travel.Need;

/** Where what is missing is read, given or chosen. */
public final class NeedAddress {
  private NeedAddress() {}

  /** A round that asks for all of these that are readings; else the page of what is given. */
  public static String of(String corner, TravelWords words, List<Need> needs) {
    List<ToRead> toRead =
        needs.stream()
            .filter(n -> n.toRead() != null)
            .map(n -> toRead(words, n))
            .distinct()
            .toList();
    if (!toRead.isEmpty()) {
      return ToReadAddress.newRound(corner, toRead);
    }
    Need need = needs.get(0);
    return given(corner, need.dimension() == null ? need.allowance() : need.dimension());
  }

  /** The box in which a dimension or an allowance is given, unfolded. */
  public static String given(String corner, Enum<?> what) {
    String box = Posted.word(what);
    return "/corners/" + corner + "/given?for=" + box + "#f-" + box;
  }

  /** One round for all that is to be read; null where that would be one thing or none. */
  public static String together(String corner, TravelWords words, List<Need> needs) {
    List<Need> toRead = needs.stream().filter(n -> n.toRead() != null).distinct().toList();
    return toRead.size() < 2 ? null : of(corner, words, toRead);
  }

  /** What to read next; where no height's name says it, the round says near which place. */
  public static String of(String corner, TravelWords words, NextReading next) {
    ToRead read = next.need().toRead();
    if (read == null || next.nearMm() == null || next.need().noHigherThanMm() != null) {
      return of(corner, words, List.of(next.need()));
    }
    String near = "near " + words.fromZero(next.nearMm());
    ToRead there =
        new ToRead(
            read.name(), near, read.steering(), read.quantity(), read.point(), read.pairing());
    return ToReadAddress.newRound(corner, List.of(there));
  }

  /** Where it must lie beyond a position, the round says so of its height in between. */
  private static ToRead toRead(TravelWords words, Need need) {
    ToRead read = need.toRead();
    if (need.noHigherThanMm() == null) {
      return read;
    }
    String beyond = words.fromZero(need.noHigherThanMm()) + " or beyond";
    return new ToRead(
        read.name(), beyond, read.steering(), read.quantity(), read.point(), read.pairing());
  }
}
