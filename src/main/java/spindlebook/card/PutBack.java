package spindlebook.card;

import java.util.Optional;
import spindlebook.fold.CarBook;
import spindlebook.page.FormKey;

/**
 * One tap that puts back what was taken back: the taking back is itself taken back.
 *
 * @param by the entry that took it back
 */
public record PutBack(String by, FormKey key) {
  public static Optional<PutBack> of(CarBook history, String entry) {
    return history.takenBackBy(entry).map(by -> new PutBack(by, FormKey.fresh(history.n())));
  }
}
