package spindlebook.photo;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** The one thing that is read of what a camera writes about its photo: how it was held. */
final class Exif {
  private static final byte[] NAME = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
  private static final int TIFF = NAME.length;
  private static final int ORIENTATION = 0x0112;

  private Exif() {}

  /**
   * @param otherwise what comes back when the block says nothing that can be read
   */
  static int orientation(byte[] block, int otherwise) {
    if (block.length < TIFF + 8 || !Arrays.equals(block, 0, TIFF, NAME, 0, TIFF)) {
      return otherwise;
    }
    boolean little = block[TIFF] == 'I';
    long directory = TIFF + (JpegCopy.int32(block, TIFF + 4, little) & 0xFFFFFFFFL);
    if (directory + 2 > block.length) {
      return otherwise;
    }
    int at = (int) directory;
    int entries = uint16(block, at, little);
    for (int i = 0; i < entries && at + 2 + 12 * (i + 1) <= block.length; i++) {
      int entry = at + 2 + 12 * i;
      if (uint16(block, entry, little) == ORIENTATION) {
        int held = uint16(block, entry + 8, little);
        return held >= 1 && held <= 8 ? held : otherwise;
      }
    }
    return otherwise;
  }

  private static int uint16(byte[] bytes, int at, boolean little) {
    int value = JpegCopy.uint16(bytes, at);
    return little ? (value & 255) << 8 | value >>> 8 : value;
  }
}
