package spindlebook.photo;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Set;

/**
 * Copies of a PNG only what its picture needs. All else (text, places, profiles, which may unpack
 * to far more than they are) is left behind unread.
 */
final class PngCopy {
  private static final long SIGNATURE = 0x89504E470D0A1A0AL;
  private static final int IHDR = 0x49484452;
  private static final int IDAT = 0x49444154;
  private static final int IEND = 0x49454E44;
  private static final Set<Integer> KEPT = Set.of(IHDR, 0x504C5445, 0x74524E53, IDAT, IEND);

  private PngCopy() {}

  /** The first eight bytes were read already and are a PNG's. */
  static boolean starts(long firstEight) {
    return firstEight == SIGNATURE;
  }

  static PhotoHeader copy(InputStream afterSignature, OutputStream to) throws IOException {
    DataInputStream in = new DataInputStream(afterSignature);
    DataOutputStream out = new DataOutputStream(to);
    out.writeLong(SIGNATURE);
    PhotoHeader header = null;
    boolean pixels = false;
    try {
      while (true) {
        int length = in.readInt();
        int type = in.readInt();
        if (length < 0 || (header == null) != (type == IHDR) || (type == IHDR && length != 13)) {
          throw PhotoRefused.unknown();
        }
        if (type == IHDR) {
          byte[] ihdr = new byte[length];
          in.readFully(ihdr);
          header = header(ihdr);
          header.check();
          out.writeInt(length);
          out.writeInt(type);
          out.write(ihdr);
          out.writeInt(in.readInt());
        } else if (KEPT.contains(type)) {
          pixels |= type == IDAT;
          out.writeInt(length);
          out.writeInt(type);
          pass(in, out, length + 4L);
        } else {
          in.skipNBytes(length + 4L);
        }
        if (type == IEND) {
          if (!pixels) {
            throw PhotoRefused.unknown();
          }
          out.flush();
          return header;
        }
      }
    } catch (EOFException early) {
      throw PhotoRefused.truncated();
    }
  }

  private static PhotoHeader header(byte[] ihdr) throws PhotoRefused {
    int width = JpegCopy.int32(ihdr, 0, false);
    int height = JpegCopy.int32(ihdr, 4, false);
    int bits = ihdr[8];
    int channels =
        switch (ihdr[9]) {
          case 0, 3 -> 1;
          case 2 -> 3;
          case 4 -> 2;
          case 6 -> 4;
          default -> throw PhotoRefused.unknown();
        };
    if (width < 1 || height < 1 || bits < 1 || bits > 16) {
      throw PhotoRefused.unknown();
    }
    return new PhotoHeader(true, width, height, Math.max(1, channels * bits / 8), 1, 0, 1);
  }

  private static void pass(InputStream in, OutputStream out, long bytes) throws IOException {
    byte[] some = new byte[8192];
    long left = bytes;
    while (left > 0) {
      int got = in.read(some, 0, (int) Math.min(some.length, left));
      if (got < 0) {
        throw new EOFException();
      }
      out.write(some, 0, got);
      left -= got;
    }
  }
}
