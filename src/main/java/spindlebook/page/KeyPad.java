package spindlebook.page;

import java.util.List;

/**
 * Keys in rows.
 *
 * @param label what the keys are for, read out before them
 * @param columns keys in a row: 3, 4 or 6
 */
public record KeyPad(String label, int columns, List<Pick> keys) {
  public KeyPad {
    if (columns != 3 && columns != 4 && columns != 6) {
      throw new IllegalArgumentException("a pad has 3, 4 or 6 columns, not " + columns);
    }
    keys = List.copyOf(keys);
  }
}
