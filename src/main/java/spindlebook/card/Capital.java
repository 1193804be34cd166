package spindlebook.card;

/** A phrase at the beginning of a line. */
public final class Capital {
  private Capital() {}

  public static String of(String words) {
    return words.isEmpty() ? words : Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }
}
