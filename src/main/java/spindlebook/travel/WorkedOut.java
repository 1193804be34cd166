package spindlebook.travel;

import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import spindlebook.entry.HeightName;

/**
 * A finding that fails stands alone: it says that it could not be worked out, and the rest is told
 * without it. No book is known to make one fail; one that does is a fault of the sums, and its page
 * must still let its readings be corrected.
 */
public final class WorkedOut {
  /** What is told in place of the finding; the fault follows. */
  public static final String NOT = "could not be worked out: ";

  private WorkedOut() {}

  /** The finding, or {@code instead} with what went wrong, in words. */
  public static <T> T or(Supplier<T> finding, Function<String, T> instead) {
    try {
      return finding.get();
    } catch (RuntimeException fault) {
      return instead.apply(NOT + fault.getMessage());
    }
  }

  /** A part of what is told, or {@code instead} told what went wrong. */
  public static void part(Runnable part, Consumer<String> instead) {
    or(
        () -> {
          part.run();
          return true;
        },
        why -> {
          instead.accept(why);
          return false;
        });
  }

  /** What is missing of an end of which nothing could be worked out. */
  static Need need(HeightName at, String why) {
    return Need.read(at, null, null, List.of(why));
  }
}
