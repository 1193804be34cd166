package spindlebook.log;

import java.io.BufferedInputStream;
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
  private long number;
  private long position;

  RawLines(Path file) throws IOException {
    in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
  }

  /** The next line, or null at the end of the file. */
  Raw next() throws IOException {
    ByteArrayOutputStream line = new ByteArrayOutputStream(512);
    long start = position;
    boolean tooLong = false;
    for (int b = in.read(); b >= 0; b = in.read()) {
      position++;
      if (b == '\n') {
        return new Raw(++number, start, line.toByteArray(), tooLong, true, position);
      }
      if (line.size() < LONGEST) {
        line.write(b);
      } else {
        tooLong = true;
      }
    }
    return position == start
        ? null
        : new Raw(++number, start, line.toByteArray(), tooLong, false, position);
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
