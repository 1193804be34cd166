package spindlebook.log;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** A file cut at its line feeds, with each line's place; a line is never held past its limit. */
final class RawLines implements AutoCloseable {
  /** The longest line of a book in bytes, without its line feed. */
  static final int LONGEST = 1 << 20;

  /**
   * One line.
   *
   * @param bytes without the line feed; cut off at the limit when too long
   * @param ended whether a line feed stood behind it
   */
  record Raw(long number, long start, byte[] bytes, boolean tooLong, boolean ended, long end) {
    boolean blank() {
      for (byte b : bytes) {
        if (b != ' ' && b != '\t' && b != '\r') {
          return false;
        }
      }
      return true;
    }
  }

  private final InputStream in;

  // What was read ahead, and how far of it was handed on.
  private final byte[] ahead = new byte[1 << 16];
  private int used;
  private int there;

  private long number;
  private long position;

  RawLines(Path file) throws IOException {
    in = Files.newInputStream(file);
  }

  /** The next line, or null at the end of the file. */
  Raw next() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(512);
    long start = position;
    boolean tooLong = false;
    while (used < there || fill()) {
      int from = used;
      while (used < there && ahead[used] != '\n') {
        used++;
      }
      int kept = Math.min(used - from, LONGEST - line.size());
      line.write(ahead, from, kept);
      tooLong |= kept < used - from;
      position += used - from;
      if (used < there) {
        used++;
        position++;
        return new Raw(++number, start, line.toByteArray(), tooLong, true, position);
      }
    }
    return position == start
        ? null
        : new Raw(++number, start, line.toByteArray(), tooLong, false, position);
  }

  private boolean fill() throws IOException {
    used = 0;
    there = Math.max(0, in.read(ahead));
    return there > 0;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
