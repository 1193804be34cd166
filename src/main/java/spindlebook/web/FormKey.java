package spindlebook.web;

import java.security.SecureRandom;

/**
 * What makes a form's entry one and the same however often it is sent.
 *
 * @param key the entry's key, made when the form is shown
 * @param after the last change of a setting, or happening, the form's reader could know of
 */
public record FormKey(String key, long after) {
  private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
  private static final int LENGTH = 14;
  private static final SecureRandom RANDOM = new SecureRandom();

  public static FormKey fresh(long after) {
    StringBuilder key = new StringBuilder(LENGTH);
    for (int i = 0; i < LENGTH; i++) {
      key.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
    }
    return new FormKey(key.toString(), after);
  }
}
