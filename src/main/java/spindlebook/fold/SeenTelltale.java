package spindlebook.fold;

import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import spindlebook.entry.Content;

/** What was read after a drive, as the book knows it. */
public record SeenTelltale(String key, long n, Instant at, String who, Content.Telltale telltale) {

  static List<SeenTelltale> in(CarBook book) {
    return book.entries().stream()
        .flatMap(
            e ->
                book.standing(e.key()).orElse(null) instanceof Content.Telltale t
                    ? Stream.of(new SeenTelltale(e.key(), e.n(), e.at(), e.who(), t))
                    : Stream.empty())
        .toList();
  }
}
