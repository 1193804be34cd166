package spindlebook.device;

import io.nayuki.qrcodegen.QrCode;

/** A link as a square of dots: for the page and, in block letters, for the terminal. */
public final class Qr {
  /** Light dots that must stand around it, by its own rules. */
  private static final int QUIET = 4;

  private final QrCode code;

  public Qr(String link) {
    this.code = QrCode.encodeText(link, QrCode.Ecc.MEDIUM);
  }

  /** Dots from edge to edge, the quiet ones too. */
  public int size() {
    return code.size + 2 * QUIET;
  }

  /** The dark dots as the path of a drawing, one unit a dot. */
  public String path() {
    StringBuilder path = new StringBuilder();
    for (int y = 0; y < size(); y++) {
      for (int x = 0; x < size(); x++) {
        if (dark(x, y)) {
          path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
        }
      }
    }
    return path.toString();
  }

  /**
   * Two rows of dots a line. Light dots are the letters' ink, as most terminals are dark; a phone
   * reads it either way round.
   */
  public String blocks() {
    StringBuilder lines = new StringBuilder();
    // From 2 to 2 dots inside: a terminal's own dark edge is no part of it, and lines are dear.
    for (int y = 2; y < size() - 2; y += 2) {
      for (int x = 2; x < size() - 2; x++) {
        boolean upper = !dark(x, y);
        boolean lower = y + 1 < size() - 2 && !dark(x, y + 1);
        lines.append(upper ? lower ? '█' : '▀' : lower ? '▄' : ' ');
      }
      lines.append('\n');
    }
    return lines.toString();
  }

  private boolean dark(int x, int y) {
    return code.getModule(x - QUIET, y - QUIET);
  }
}
