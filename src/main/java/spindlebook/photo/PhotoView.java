package spindlebook.photo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import spindlebook.card.Days;
import spindlebook.entry.Content;
import spindlebook.entry.PhotoSide;
import spindlebook.fold.CarBook;
import spindlebook.fold.Written;
import spindlebook.words.EntryWords;

/**
 * The photos of one corner.
 *
 * @param pairs changes with a photo from before and one from after, newest first
 * @param shots all others, newest first
 */
public record PhotoView(List<Pair> pairs, List<Shot> shots) {

  /** A change, seen before and after. */
  public record Pair(String change, Shot before, Shot after) {}

  /** One photo. */
  public record Shot(
      String words,
      String when,
      String small,
      String full,
      int widthPx,
      int heightPx,
      String href) {
    static Shot of(Written<Content.Photo> seen, EntryWords words) {
      String file = "/photos/" + seen.content().file();
      int longer = Math.max(seen.content().widthPx(), seen.content().heightPx());
      int step = Picture.step(longer, Picture.SMALL_SIDE_PX);
      return new Shot(
          words.of(seen.content()),
          Days.day(seen.at()) + " · " + seen.who(),
          file + ".small.jpg",
          file + ".jpg",
          Math.max(1, seen.content().widthPx() / step),
          Math.max(1, seen.content().heightPx() / step),
          "/entries/" + seen.key());
    }
  }

  /** The photos of one reading or change, in the order in which they came. */
  public static List<Shot> ofEntry(CarBook book, String key) {
    return shots(book, p -> key.equals(p.content().target()));
  }

  /** The photos of one watch point, its readings' own not among them. */
  public static List<Shot> ofPoint(CarBook book, String corner, String point) {
    return shots(
        book, p -> p.content().corner().equals(corner) && point.equals(p.content().point()));
  }

  /** A photo's own page shows it. */
  public static List<Shot> itself(CarBook book, String key) {
    return shots(book, p -> p.key().equals(key));
  }

  private static List<Shot> shots(CarBook book, Predicate<Written<Content.Photo>> wanted) {
    EntryWords words = new EntryWords(book);
    return book.photos().stream().filter(wanted).map(p -> Shot.of(p, words)).toList();
  }

  static PhotoView of(CarBook book, String corner) {
    EntryWords words = new EntryWords(book);
    Map<String, Written<Content.Photo>> before = new LinkedHashMap<>();
    Map<String, Written<Content.Photo>> after = new LinkedHashMap<>();
    List<Written<Content.Photo>> here =
        book.photos().stream().filter(p -> p.content().corner().equals(corner)).toList();
    for (Written<Content.Photo> seen : here) {
      if (seen.content().target() != null && seen.content().side() != null) {
        (seen.content().side() == PhotoSide.BEFORE ? before : after)
            .put(seen.content().target(), seen);
      }
    }
    List<Pair> pairs = new ArrayList<>();
    List<Written<Content.Photo>> paired = new ArrayList<>();
    before.forEach(
        (change, one) -> {
          Written<Content.Photo> other = after.get(change);
          if (other != null && book.standing(change).isPresent()) {
            paired.add(one);
            paired.add(other);
            pairs.add(
                0,
                new Pair(
                    words.of(book.standing(change).orElseThrow()),
                    Shot.of(one, words),
                    Shot.of(other, words)));
          }
        });
    List<Shot> shots = new ArrayList<>();
    here.stream().filter(p -> !paired.contains(p)).forEach(p -> shots.add(0, Shot.of(p, words)));
    return new PhotoView(pairs, shots);
  }
}
