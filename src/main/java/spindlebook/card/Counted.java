package spindlebook.card;

/** How many of a thing, in words. */
public final class Counted {
  private Counted() {}

  /** {@code 1 reading}, {@code 3 readings}. */
  public static String of(long n, String one) {
    return of(n, one, one + "s");
  }

  public static String of(long n, String one, String more) {
    return n + " " + (n == 1 ? one : more);
  }
}
