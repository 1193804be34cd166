package spindlebook.drawing;

import java.util.ArrayList;
import java.util.List;

/**
 * How wide text comes out in a typeface we do not choose. Widths are those of a wide sans serif, so
 * that a narrower one leaves room and never overlaps; from memory of DejaVu Sans, rounded up.
 */
public final class TextWidth {
  private TextWidth() {}

  /** Width in drawing units of one line set at the given size in drawing units. */
  public static double of(String text, double size, boolean bold) {
    double em = text.codePoints().mapToDouble(TextWidth::em).sum();
    return em * size * (bold ? 1.12 : 1);
  }

  /**
   * Breaks at spaces, and inside a word only when it alone is too wide; the last line may end in
   * '…'.
   */
  public static List<String> wrap(
      String text, double size, boolean bold, double width, int maxLines) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.strip().split("\\s+")) {
      String rest = word;
      while (!rest.isEmpty()) {
        String joined = line.isEmpty() ? rest : line + " " + rest;
        if (of(joined, size, bold) <= width) {
          line.setLength(0);
          line.append(joined);
          break;
        }
        if (!line.isEmpty()) {
          lines.add(line.toString());
          line.setLength(0);
        } else {
          int fits = fitting(rest, size, bold, width);
          lines.add(rest.substring(0, fits));
          rest = rest.substring(fits);
        }
      }
    }
    if (!line.isEmpty()) {
      lines.add(line.toString());
    }
    if (lines.size() <= maxLines) {
      return List.copyOf(lines);
    }
    String last = lines.get(maxLines - 1);
    int kept = Math.min(last.length(), fitting(last, size, bold, width - of("…", size, bold)));
    List<String> cut = new ArrayList<>(lines.subList(0, maxLines - 1));
    cut.add(last.substring(0, kept).stripTrailing() + "…");
    return List.copyOf(cut);
  }

  /** How many leading characters fit; at least one, never half of a surrogate pair. */
  private static int fitting(String text, double size, boolean bold, double width) {
    int end = text.offsetByCodePoints(0, 1);
    while (end < text.length()) {
      int next = text.offsetByCodePoints(end, 1);
      if (of(text.substring(0, next), size, bold) > width) {
        break;
      }
      end = next;
    }
    return end;
  }

  private static double em(int codePoint) {
    if (codePoint > 0x2E7F) {
      return 1.05;
    }
    return switch (codePoint) {
      case 'i', 'j', 'l', '\'', '|', '.', ',', ':', ';', '!', ' ', '’' -> 0.34;
      case 'f', 't', 'r', '(', ')', '/', '-', '1' -> codePoint == '1' ? 0.64 : 0.42;
      case '+', '−', '=', '±' -> 0.78;
      case 'm', 'w', 'M', 'W', '…', '%', '@' -> 1.0;
      default -> Character.isUpperCase(codePoint) ? 0.78 : 0.64;
    };
  }
}
