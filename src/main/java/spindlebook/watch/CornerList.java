package spindlebook.watch;

import java.util.List;
import spindlebook.log.Book;

/** Keys of all corners in the book, of all cars, in its order. */
public record CornerList(Book book) {
  List<String> keys() {
    return book.read(
        handle ->
            handle
                .createQuery(
                    """
                    select key from entry where kind = 'corner' order by kind, n
                    """)
                .mapTo(String.class)
                .list());
  }
}
