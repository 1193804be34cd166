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
 * to far more than they are, and which the decoder would unpack) is left behind unread.
 */
final class BarePng {
  private static final int IHDR = 0x49484452;
  private static final int IDAT = 0x49444154;
  private static final int IEND = 0x49454E44;
  private static final Set<Integer> KEPT = Set.of(0x504C5445, 0x74524E53, IDAT, IEND);

  private BarePng() {}

  /** The signature was handed on already. */
  static PhotoHeader copy(InputStream afterSignature, OutputStream to) throws IOException {
    DataInputStream in = new DataInputStream(afterSignature);
    DataOutputStream out = new DataOutputStream(to);
    boolean pixels = false;
    try {
      if (in.readInt() != 13 || in.readInt() != IHDR) {
        throw PhotoRefused.unknown();
      }
      byte[] ihdr = in.readNBytes(13 + 4);
      PhotoHeader header = header(ihdr);
      out.writeInt(13);
      out.writeInt(IHDR);
      out.write(ihdr);
      int type = IHDR;
      while (type != IEND) {
        int length = in.readInt();
        type = in.readInt();
        if (length < 0) {
          throw PhotoRefused.unknown();
        }
        pixels |= type == IDAT;
        if (KEPT.contains(type)) {
          out.writeInt(length);
          out.writeInt(type);
          pass(in, out, length + 4L);
        } else {
          in.skipNBytes(length + 4L);
        }
      }
      if (!pixels) {
        throw PhotoRefused.unknown();
      }
      return header;
    } catch (EOFException early) {
      throw PhotoRefused.truncated();
    }
  }

  private static PhotoHeader header(byte[] ihdr) throws IOException {
    if (ihdr.length < 13) {
      throw PhotoRefused.truncated();
    }
    DataInputStream said = new DataInputStream(new java.io.ByteArrayInputStream(ihdr));
    int width = said.readInt();
    int height = said.readInt();
    int bits = said.readByte();
    int channels =
        switch (said.readByte()) {
          case 0, 3 -> 1;
          case 2 -> 3;
          case 4 -> 2;
          case 6 -> 4;
          default -> throw PhotoRefused.unknown();
        };
    if (bits < 1 || bits > 16) {
      throw PhotoRefused.unknown();
    }
    return new PhotoHeader(true, width, height, Math.max(1, channels * bits / 8), 1, 0, 1)
        .checked();
  }

  private static void pass(InputStream in, OutputStream out, long bytes) throws IOException {
    byte[] some = new byte[8192];
    for (long left = bytes; left > 0; ) {
      int got = in.read(some, 0, (int) Math.min(some.length, left));
      if (got < 0) {
        throw new EOFException();
      }
      out.write(some, 0, got);
      left -= got;
    }
  }
}
