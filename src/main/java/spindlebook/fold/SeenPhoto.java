package spindlebook.fold;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.entry.Content;

/** A photo, as the book knows it. */
public record SeenPhoto(String key, long n, Instant at, String who, Content.Photo photo) {

  static List<SeenPhoto> in(CarBook book) {
    return book.entries().stream()
        .flatMap(
            e ->
                book.standing(e.key()).orElse(null) instanceof Content.Photo p
                    ? Stream.of(new SeenPhoto(e.key(), e.n(), e.at(), e.who(), p))
                    : Stream.empty())
        .toList();
  }
}
