package spindlebook.photo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import spindlebook.card.Days;
import spindlebook.entry.PhotoSide;
import spindlebook.fold.CarBook;
import spindlebook.fold.SeenPhoto;
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
    static Shot of(SeenPhoto seen, EntryWords words) {
      String file = "/photos/" + seen.photo().file();
      int longer = Math.max(seen.photo().widthPx(), seen.photo().heightPx());
      int step = Picture.step(longer, Picture.SMALL_SIDE_PX);
      return new Shot(
          words.of(seen.photo()),
          Days.day(seen.at()) + " · " + seen.who(),
          file + ".small.jpg",
          file + ".jpg",
          Math.max(1, seen.photo().widthPx() / step),
          Math.max(1, seen.photo().heightPx() / step),
          "/entries/" + seen.key());
    }
  }

  /** The photos of one reading or change, in the order in which they came. */
  public static List<Shot> ofEntry(CarBook book, String key) {
    return shots(book, p -> key.equals(p.photo().target()));
  }

  /** The photos of one watch point, its readings' own not among them. */
  public static List<Shot> ofPoint(CarBook book, String corner, String point) {
    return shots(book, p -> p.photo().corner().equals(corner) && point.equals(p.photo().point()));
  }

  /** A photo's own page shows it. */
  public static List<Shot> itself(CarBook book, String key) {
    return shots(book, p -> p.key().equals(key));
  }

  private static List<Shot> shots(CarBook book, Predicate<SeenPhoto> wanted) {
    EntryWords words = new EntryWords(book);
    return book.photos().stream().filter(wanted).map(p -> Shot.of(p, words)).toList();
  }

  static PhotoView of(CarBook book, String corner) {
    EntryWords words = new EntryWords(book);
    Map<String, SeenPhoto> before = new LinkedHashMap<>();
    Map<String, SeenPhoto> after = new LinkedHashMap<>();
    List<SeenPhoto> here =
        book.photos().stream().filter(p -> p.photo().corner().equals(corner)).toList();
    for (SeenPhoto seen : here) {
      if (seen.photo().target() != null && seen.photo().side() != null) {
        (seen.photo().side() == PhotoSide.BEFORE ? before : after).put(seen.photo().target(), seen);
      }
    }
    List<Pair> pairs = new ArrayList<>();
    List<SeenPhoto> paired = new ArrayList<>();
    before.forEach(
        (change, one) -> {
          SeenPhoto other = after.get(change);
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
