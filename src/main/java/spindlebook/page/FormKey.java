package spindlebook.page;

import java.security.SecureRandom;
import java.util.List;

/**
 * What makes a form's entry one and the same however often it is sent.
 *
 * @param key the entry's key, made when the form is shown
 * @param after the last change of a setting, or happening, the form's reader could know of
 */
public record FormKey(String key, long after) {
  private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
  public static final int LENGTH = 14;
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final ThreadLocal<List<String>> DRAWN = new ThreadLocal<>();

  public static FormKey fresh(long after) {
    StringBuilder key = new StringBuilder(LENGTH);
    for (int i = 0; i < LENGTH; i++) {
      key.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
    }
    if (DRAWN.get() != null) {
      DRAWN.get().add(key.toString());
    }
    return new FormKey(key.toString(), after);
  }

  /** In a book that was put back from an older copy since, nobody knows more than it holds. */
  public FormKey within(long lastN) {
    return new FormKey(key, Math.min(after, lastN));
  }

  /** Notes from now on the keys that this thread makes; null to end it. */
  public static void noteIn(List<String> keys) {
    DRAWN.set(keys);
  }
}
