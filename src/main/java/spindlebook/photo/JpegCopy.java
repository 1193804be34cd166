package spindlebook.photo;

import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;

/**
 * Copies of a JPEG only what its picture needs, and reads on the way how large it is and how the
 * camera was held. Places, times, makers, profiles and small pictures inside are left behind.
 *
 * <p>The markers are those of ISO/IEC 10918-1, table B.1; the orientation is tag 0x0112 of the
 * first directory of an Exif block (both from memory).
 */
final class JpegCopy {
  /** A progressive photo is held whole while it is decoded: 2 bytes for every coefficient. */
  private static final long MOST_COEFFICIENT_BYTES = 40_000_000;

  /** A progressive photo has about ten; each takes a walk over the whole picture. */
  private static final int MOST_SCANS = 40;

  private static final int APP0 = 0xE0;
  private static final int EXIF = 0xE1;
  private static final int ADOBE = 0xEE;
  private static final int COMMENT = 0xFE;

  private final DataInputStream in;
  private final OutputStream out;
  private int widthPx;
  private int heightPx;
  private int components;
  private int orientation = 1;
  private int scans;
  private boolean progressive;
  private long coefficientBytes;
  private long heldBytes;

  private JpegCopy(InputStream in, OutputStream out) {
    this.in = new DataInputStream(in);
    this.out = out;
  }

  static boolean starts(long firstEight) {
    return firstEight >>> 40 == 0xFFD8FF;
  }

  /**
   * @param firstEight the bytes that were read already
   */
  static PhotoHeader copy(long firstEight, InputStream rest, OutputStream to) throws IOException {
    byte[] six = new byte[6];
    for (int i = 0; i < 6; i++) {
      six[i] = (byte) (firstEight >>> (8 * (5 - i)));
    }
    to.write(0xFF);
    to.write(0xD8);
    InputStream all = new java.io.SequenceInputStream(new java.io.ByteArrayInputStream(six), rest);
    try {
      return new JpegCopy(all, to).segments();
    } catch (EOFException early) {
      throw PhotoRefused.truncated();
    }
  }

  private PhotoHeader segments() throws IOException {
    int marker = marker();
    while (marker != 0xD9) {
      if (marker == 0xDA) {
        marker = scan();
      } else {
        segment(marker);
        marker = marker();
      }
    }
    if (scans == 0) {
      throw PhotoRefused.unknown();
    }
    mark(0xD9);
    out.flush();
    return new PhotoHeader(false, widthPx, heightPx, components, scans, heldBytes, orientation);
  }

  private int marker() throws IOException {
    if (in.readUnsignedByte() != 0xFF) {
      throw PhotoRefused.unknown();
    }
    int marker = in.readUnsignedByte();
    while (marker == 0xFF) {
      marker = in.readUnsignedByte();
    }
    return marker;
  }

  private void mark(int marker) throws IOException {
    out.write(0xFF);
    out.write(marker);
  }

  private byte[] content() throws IOException {
    int length = in.readUnsignedShort();
    if (length < 2) {
      throw PhotoRefused.unknown();
    }
    byte[] content = new byte[length - 2];
    in.readFully(content);
    return content;
  }

  private void put(int marker, byte[] content) throws IOException {
    mark(marker);
    out.write((content.length + 2) >>> 8);
    out.write(content.length + 2);
    out.write(content);
  }

  private void segment(int marker) throws IOException {
    byte[] content = content();
    if (marker == EXIF) {
      orientation = Exif.orientation(content, orientation);
    }
    boolean frame = marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8;
    if (frame) {
      frame(marker, content);
    }
    boolean about = marker >= APP0 && marker <= 0xEF && marker != ADOBE;
    if (!about && marker != COMMENT) {
      put(marker, content);
    }
  }

  /** Baseline, extended or progressive, of one or three colours, eight bits each. */
  private void frame(int marker, byte[] frame) throws PhotoRefused {
    if (widthPx != 0 || marker > 0xC2 || frame.length < 6 || frame[0] != 8) {
      throw PhotoRefused.unknown();
    }
    heightPx = uint16(frame, 1);
    widthPx = uint16(frame, 3);
    components = frame[5];
    if ((components != 1 && components != 3) || frame.length < 6 + 3 * components) {
      throw PhotoRefused.unknown();
    }
    new PhotoHeader(false, widthPx, heightPx, components, 1, 0, 1).check();
    progressive = marker == 0xC2;
    coefficientBytes = coefficientBytes(frame);
  }

  private long coefficientBytes(byte[] frame) throws PhotoRefused {
    int most = 1;
    long all = 0;
    for (int i = 0; i < components; i++) {
      int across = (frame[7 + 3 * i] >> 4) & 15;
      int down = frame[7 + 3 * i] & 15;
      if (across < 1 || across > 4 || down < 1 || down > 4) {
        throw PhotoRefused.unknown();
      }
      most = Math.max(most, across * down);
      all += (long) across * down;
    }
    return 2L * widthPx * heightPx * all / most;
  }

  /** One scan with its pixels; back comes the marker after it. */
  private int scan() throws IOException {
    if (widthPx == 0 || ++scans > MOST_SCANS) {
      throw PhotoRefused.unknown();
    }
    byte[] scan = content();
    // Colours that come one after the other are collected as a progressive photo is.
    if (progressive || (scan.length > 0 && scan[0] < components)) {
      heldBytes = coefficientBytes;
    }
    if (heldBytes > MOST_COEFFICIENT_BYTES) {
      throw new PhotoRefused(
          "The photo is saved progressively and too large for that: send it smaller, or as the"
              + " camera saves it.");
    }
    put(0xDA, scan);
    while (true) {
      int next = in.readUnsignedByte();
      if (next != 0xFF) {
        out.write(next);
        continue;
      }
      int after = in.readUnsignedByte();
      while (after == 0xFF) {
        after = in.readUnsignedByte();
      }
      boolean inside = after == 0 || (after >= 0xD0 && after <= 0xD7);
      if (!inside) {
        return after;
      }
      mark(after);
    }
  }

  static int uint16(byte[] bytes, int at) {
    return (bytes[at] & 255) << 8 | (bytes[at + 1] & 255);
  }

  static int int32(byte[] bytes, int at, boolean littleEndian) {
    int value = 0;
    for (int i = 0; i < 4; i++) {
      value |= (bytes[at + i] & 255) << (littleEndian ? 8 * i : 24 - 8 * i);
    }
    return value;
  }
}
