package spindlebook.photo;

import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.jpeg.JpegProcessingException;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.jpeg.JpegComponent;
import com.drew.metadata.jpeg.JpegDirectory;
import com.drew.metadata.jpeg.JpegReader;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * What a photo's header says, before anything of it is decoded.
 *
 * @param png true for PNG, false for JPEG
 * @param bytesPerPx what one pixel takes once it is decoded, rounded up
 * @param passes how often the decoder walks over the picture: once, or once a scan of a progressive
 *     one
 * @param heldBytes what the decoder holds of it besides, where it must hold all of it at once
 * @param orientation as the camera was held, 1 to 8 as in EXIF; 1 is upright
 */
record PhotoHeader(
    boolean png,
    int widthPx,
    int heightPx,
    int bytesPerPx,
    int passes,
    long heldBytes,
    int orientation) {
  static final int MOST_PX = 40_000_000;

  /** So that no single row is large. */
  static final int LONGEST_SIDE_PX = 16_384;

  /** A progressive photo is held whole while it is decoded: 2 bytes for every coefficient. */
  private static final long MOST_HELD_BYTES = 40_000_000;

  /** A progressive photo has about ten scans; each takes a walk over the whole picture. */
  private static final int MOST_SCANS = 40;

  private static final int PROGRESSIVE = 2;

  /** Itself, unless it promises more than is taken. */
  PhotoHeader checked() throws PhotoRefused {
    if (widthPx < 1 || heightPx < 1) {
      throw PhotoRefused.unknown();
    }
    boolean large = (long) widthPx * heightPx > MOST_PX;
    if (large || widthPx > LONGEST_SIDE_PX || heightPx > LONGEST_SIDE_PX) {
      throw new PhotoRefused(
          "The photo is "
              + widthPx
              + " by "
              + heightPx
              + " pixels: send one of at most 40 megapixels and "
              + LONGEST_SIDE_PX
              + " on a side.");
    }
    if (heldBytes > MOST_HELD_BYTES) {
      throw new PhotoRefused(
          "The photo is saved progressively and too large for that: send it smaller, or as the"
              + " camera saves it.");
    }
    return this;
  }

  /** Of a JPEG of one or three colours, eight bits each, that is there to its end. */
  static PhotoHeader ofJpeg(Path file) throws IOException {
    Scans scans = scans(file);
    try (InputStream in = new BufferedInputStream(Files.newInputStream(file))) {
      Metadata said =
          JpegMetadataReader.readMetadata(in, List.of(new JpegReader(), new ExifReader()));
      JpegDirectory frame = said.getFirstDirectoryOfType(JpegDirectory.class);
      if (frame == null || frame.getInt(JpegDirectory.TAG_DATA_PRECISION) != 8) {
        throw PhotoRefused.unknown();
      }
      int components = frame.getNumberOfComponents();
      int compression = frame.getInt(JpegDirectory.TAG_COMPRESSION_TYPE);
      if ((components != 1 && components != 3) || compression > PROGRESSIVE) {
        throw PhotoRefused.unknown();
      }
      // Colours that come one after the other are collected as a progressive photo is.
      boolean held = scans.fewestColours() < components || compression == PROGRESSIVE;
      return new PhotoHeader(
              false,
              frame.getImageWidth(),
              frame.getImageHeight(),
              components,
              scans.count(),
              held ? coefficientBytes(frame, components) : 0,
              orientation(said))
          .checked();
    } catch (JpegProcessingException | MetadataException strange) {
      throw PhotoRefused.unknown();
    }
  }

  private static int orientation(Metadata said) {
    return said.getDirectoriesOfType(ExifIFD0Directory.class).stream()
        .map(d -> d.getInteger(ExifIFD0Directory.TAG_ORIENTATION))
        .filter(held -> held != null && held >= 1 && held <= 8)
        .reduce((first, second) -> second)
        .orElse(1);
  }

  private static long coefficientBytes(JpegDirectory frame, int components)
      throws MetadataException {
    int most = 1;
    long all = 0;
    for (int i = 0; i < components; i++) {
      JpegComponent colour = frame.getComponent(i);
      int blocks = colour.getHorizontalSamplingFactor() * colour.getVerticalSamplingFactor();
      most = Math.max(most, blocks);
      all += blocks;
    }
    return 2L * frame.getImageWidth() * frame.getImageHeight() * all / most;
  }

  /** The walks over the pixels, and of how many colours the one of the fewest is. */
  private record Scans(int count, int fewestColours) {}

  /** Of a file that is read to the end of its picture. */
  private static Scans scans(Path file) throws IOException {
    int scans = 0;
    int fewest = Integer.MAX_VALUE;
    try (InputStream from = new BufferedInputStream(Files.newInputStream(file), 1 << 16)) {
      DataInputStream in = new DataInputStream(from);
      in.skipNBytes(2);
      boolean pixels = false;
      for (int marker = marker(in, false); marker != 0xD9; marker = marker(in, pixels)) {
        pixels = marker == 0xDA;
        scans += pixels ? 1 : 0;
        int length = in.readUnsignedShort();
        if (length < (pixels ? 3 : 2) || scans > MOST_SCANS) {
          throw PhotoRefused.unknown();
        }
        if (pixels) {
          fewest = Math.min(fewest, in.readUnsignedByte());
        }
        in.skipNBytes(length - (pixels ? 3 : 2));
      }
    } catch (EOFException early) {
      throw PhotoRefused.truncated();
    }
    if (scans == 0) {
      throw PhotoRefused.unknown();
    }
    return new Scans(scans, fewest);
  }

  /** Makes comments of the segments that may hold a profile; whether there was one. */
  static boolean withoutProfile(Path jpeg) throws IOException {
    boolean found = false;
    try (RandomAccessFile in = new RandomAccessFile(jpeg.toFile(), "rw")) {
      in.seek(2);
      for (int marker = in.readUnsignedShort(); marker != 0xFFDA; marker = in.readUnsignedShort()) {
        if (marker == 0xFFE2) {
          in.seek(in.getFilePointer() - 1);
          in.write(0xFE);
          found = true;
        }
        long here = in.getFilePointer();
        in.seek(here + in.readUnsignedShort());
      }
    }
    return found;
  }

  /** The marker that comes next, or comes behind the pixels of a scan. */
  private static int marker(DataInputStream in, boolean pixels) throws IOException {
    while (true) {
      int next = in.readUnsignedByte();
      if (next != 0xFF && !pixels) {
        throw PhotoRefused.unknown();
      }
      while (next != 0xFF) {
        next = in.readUnsignedByte();
      }
      while (next == 0xFF) {
        next = in.readUnsignedByte();
      }
      boolean inside = next == 0 || (next >= 0xD0 && next <= 0xD7);
      if (!inside || !pixels) {
        return next;
      }
    }
  }
}
