package spindlebook.parts;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Threads that rod ends come in.
 *
 * <pre>  inch: pitch = 25.4 / threads per inch        metric: pitch as named, mm</pre>
 *
 * <p>Source: coarse and fine series (UNC, UNF; 1-14 UNS) of ASME B1.1 and coarse and fine pitches
 * of ISO 261, all from memory: the stamp on the part, or a thread gauge, wins. Each is listed
 * right-hand; a left-hand one has the same pitch.
 *
 * <p>Worked example: 5/8-18: diameter 15.875 mm, pitch 1.4111 mm.
 */
public final class RodThreads {
  private static final double INCH_MM = 25.4;

  /** Sixteenths of an inch, then threads per inch, coarse first. */
  private static final int[][] INCH = {
    {4, 20, 28},
    {5, 18, 24},
    {6, 16, 24},
    {7, 14, 20},
    {8, 13, 20},
    {9, 12, 18},
    {10, 11, 18},
    {12, 10, 16},
    {14, 9, 14},
    {16, 8, 12, 14},
    {18, 7, 12},
    {20, 7, 12}
  };

  /** Diameter, then pitches, coarse first, mm. */
  private static final double[][] METRIC = {
    {6, 1},
    {8, 1.25, 1},
    {10, 1.5, 1.25, 1},
    {12, 1.75, 1.5, 1.25},
    {14, 2, 1.5},
    {16, 2, 1.5},
    {18, 2.5, 2, 1.5},
    {20, 2.5, 2, 1.5},
    {22, 2.5, 2, 1.5},
    {24, 3, 2, 1.5},
    {27, 3, 2, 1.5},
    {30, 3.5, 2, 1.5}
  };

  static final List<RodThread> ALL = all();

  private RodThreads() {}

  /**
   * By its name: {@code 5/8-18}, {@code m16 x 1.5}, {@code 5/8-18 UNF}, each with LH or left behind
   * for a left-hand one; blanks do not matter.
   */
  public static Optional<RodThread> named(String name) {
    String plain = plain(name);
    boolean left = plain.matches(".*(LH|LEFT)$");
    String bare = bare(plain);
    return ALL.stream()
        .filter(t -> plain(t.name()).equals(bare))
        .map(t -> left ? t.with(Hand.LEFT) : t)
        .findFirst();
  }

  /** Names of the threads as thick as the one named, whatever its pitch; may be none. */
  public static List<String> asThickAs(String name) {
    String thick = diameter(bare(plain(name)));
    return ALL.stream()
        .map(RodThread::name)
        .filter(known -> diameter(plain(known)).equals(thick))
        .toList();
  }

  private static String plain(String name) {
    return name.replaceAll("\\s+", "").replace('×', 'x').toUpperCase(Locale.ROOT);
  }

  /** Without its hand and its series. */
  private static String bare(String plain) {
    return plain.replaceFirst("-?(LH|RH|LEFT|RIGHT)$", "").replaceFirst("-?UN[CFS]?$", "");
  }

  private static String diameter(String bare) {
    return bare.replaceFirst("[-X].*", "");
  }

  private static List<RodThread> all() {
    List<RodThread> all = new ArrayList<>();
    for (int[] row : INCH) {
      for (int i = 1; i < row.length; i++) {
        String name = inches(row[0]) + "-" + row[i];
        all.add(new RodThread(name, row[0] * INCH_MM / 16, INCH_MM / row[i], Hand.RIGHT));
      }
    }
    for (double[] row : METRIC) {
      for (int i = 1; i < row.length; i++) {
        String name = "M" + (int) row[0] + "x" + Double.toString(row[i]).replaceFirst("\\.0$", "");
        all.add(new RodThread(name, row[0], row[i], Hand.RIGHT));
      }
    }
    return List.copyOf(all);
  }

  private static String inches(int sixteenths) {
    int whole = sixteenths / 16;
    int rest = sixteenths % 16;
    if (rest == 0) {
      return Integer.toString(whole);
    }
    int down = Integer.lowestOneBit(rest);
    String fraction = rest / down + "/" + 16 / down;
    return whole == 0 ? fraction : whole + " " + fraction;
  }
}
