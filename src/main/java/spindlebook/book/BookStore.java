package spindlebook.book;

import java.util.List;
import java.util.Set;
import spindlebook.log.Book;
import spindlebook.log.Draft;

/** The book's lists. */
public record BookStore(Book book) {
  /**
   * Positions of a car's entries, newest first, one page.
   *
   * @param corner null for all; likewise the other filters
   * @param among only these positions
   * @param before only entries below this position; 0 for the newest
   */
  List<Long> page(String car, String corner, String kind, Set<Long> among, long before, int most) {
    return book.read(
        handle ->
            handle
                .createQuery(
                    """
                    select e.n
                    from entry e
                    where e.car = :car
                      and (:corner is null or e.corner = :corner)
                      and (:kind is null or e.kind = :kind)
                      and e.n < :before
                    order by e.car desc, e.n desc
                    fetch first :most rows only
                    """)
                .bind("car", car)
                .bind("corner", corner)
                .bind("kind", kind)
                .bind("before", before == 0 ? Long.MAX_VALUE : before)
                .bind("most", among == null ? most : Integer.MAX_VALUE)
                .mapTo(Long.class)
                .stream()
                .filter(n -> among == null || among.contains(n))
                .limit(most)
                .toList());
  }

  /** Kinds of entries a car has, for the filter. */
  List<String> kinds(String car) {
    return book.read(
        handle ->
            handle
                .createQuery(
                    """
                    select distinct kind from entry where car = :car order by kind
                    """)
                .bind("car", car)
                .mapTo(String.class)
                .list());
  }

  /** The key of the entry whose form was sent again with this; null when it was not so. */
  String firstOf(String key) {
    return Draft.first(key);
  }

  String line(String key) {
    return book.line(key).orElse("");
  }
}
