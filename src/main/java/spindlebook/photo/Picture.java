package spindlebook.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import net.coobird.thumbnailator.Thumbnails;
import net.coobird.thumbnailator.util.exif.ExifFilterUtils;
import net.coobird.thumbnailator.util.exif.Orientation;

/**
 * A photo as it is kept: upright, at most {@value #MOST_SIDE_PX} pixels on its long side, a plain
 * JPEG with nothing beside its pixels, and a small one for lists.
 *
 * <p>Its header is read before anything is decoded, its pixels are decoded thinned out as far as
 * they must be, and the file on its way is on the disk: all of it stays under 64 MB of memory
 * whatever is sent.
 */
record Picture(int widthPx, int heightPx, byte[] jpeg, byte[] small) {
  static final int MOST_SIDE_PX = 2048;
  static final int SMALL_SIDE_PX = 360;

  /**
   * The picture, and as much again for every walk over it: the decoders leave it behind by rows.
   */
  private static final long MOST_DECODED_BYTES = 40_000_000;

  private static final long MOST_HELD_BYTES = 48_000_000;
  private static final float QUALITY = 0.85f;
  private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
  private static final byte[] JPEG = {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF};

  static {
    // The disk is used where we say so, nowhere else.
    ImageIO.setUseCache(false);
  }

  /**
   * @param folder where the photo may lie while it is read
   * @throws PhotoRefused in one sentence, when it is none or cannot be kept
   */
  static Picture of(InputStream sent, Path folder) throws IOException {
    Path here = Files.createTempFile(folder, "incoming", ".part");
    try {
      PhotoHeader header = put(sent, here);
      BufferedImage plain = drawn(header, here);
      BufferedImage upright =
          ExifFilterUtils.getFilterForOrientation(Orientation.typeOf(header.orientation()))
              .apply(plain);
      int wide = upright.getWidth();
      int high = upright.getHeight();
      int step = step(Math.max(wide, high), SMALL_SIDE_PX);
      return new Picture(
          wide,
          high,
          written(upright),
          written(
              Thumbnails.of(upright)
                  .forceSize(Math.max(1, wide / step), Math.max(1, high / step))
                  .imageType(BufferedImage.TYPE_3BYTE_BGR)
                  .asBufferedImage()));
    } finally {
      Files.deleteIfExists(here);
    }
  }

  /** Puts what was sent on the disk; of a PNG only what its picture needs. */
  private static PhotoHeader put(InputStream sent, Path here) throws IOException {
    try (InputStream in = new BufferedInputStream(sent, 1 << 16);
        OutputStream out = new BufferedOutputStream(Files.newOutputStream(here), 1 << 16)) {
      byte[] first = in.readNBytes(PNG.length);
      out.write(first);
      if (Arrays.equals(first, PNG)) {
        return BarePng.copy(in, out);
      }
      if (Arrays.mismatch(first, JPEG) != JPEG.length) {
        throw PhotoRefused.unknown();
      }
      in.transferTo(out);
    }
    return PhotoHeader.ofJpeg(here);
  }

  /** What was sent in plain colours; a JPEG whose profile is not of its colours without that. */
  private static BufferedImage drawn(PhotoHeader header, Path file) throws PhotoRefused {
    // Both decoding and drawing throw either when the pixels, or the profile they are to be seen
    // through, are not what the header promised.
    try {
      return plain(decoded(header, file));
    } catch (IOException | RuntimeException broken) {
      try {
        if (!header.png() && PhotoHeader.withoutProfile(file)) {
          return plain(decoded(header, file));
        }
      } catch (IOException | RuntimeException pixels) {
        broken.addSuppressed(pixels);
      }
      throw new PhotoRefused("The photo is damaged and cannot be read: take or send it again.");
    }
  }

  private static BufferedImage decoded(PhotoHeader header, Path file) throws IOException {
    ImageReader reader = ImageIO.getImageReadersByFormatName(header.png() ? "png" : "jpeg").next();
    try (FileImageInputStream in = new FileImageInputStream(file.toFile())) {
      reader.setInput(in, true, true);
      ImageReadParam param = reader.getDefaultReadParam();
      int step = step(header);
      param.setSourceSubsampling(step, step, 0, 0);
      return reader.read(0, param);
    } finally {
      reader.dispose();
    }
  }

  /** Every how many pixels one is decoded. */
  private static int step(PhotoHeader header) {
    long most = Math.min(MOST_DECODED_BYTES, MOST_HELD_BYTES - header.heldBytes());
    int step = 1;
    while (decodedBytes(header, step) * (1 + header.passes()) > most) {
      step++;
    }
    return step;
  }

  private static long decodedBytes(PhotoHeader header, int step) {
    long wide = (header.widthPx() + step - 1) / step;
    long high = (header.heightPx() + step - 1) / step;
    return wide * high * header.bytesPerPx();
  }

  /** By how many a side is divided so that it is no longer than that: pictures shrink in steps. */
  static int step(int side, int most) {
    return (side + most - 1) / most;
  }

  /** In plain colours on white, and as small as it is kept. */
  private static BufferedImage plain(BufferedImage from) {
    int step = step(Math.max(from.getWidth(), from.getHeight()), MOST_SIDE_PX);
    int wide = Math.max(1, from.getWidth() / step);
    int high = Math.max(1, from.getHeight() / step);
    BufferedImage to = new BufferedImage(wide, high, BufferedImage.TYPE_3BYTE_BGR);
    Graphics2D pen = to.createGraphics();
    pen.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, wide, high);
    pen.drawImage(from, 0, 0, wide, high, null);
    pen.dispose();
    return to;
  }

  private static byte[] written(BufferedImage image) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 18);
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    try (ImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      ImageWriteParam param = writer.getDefaultWriteParam();
      param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      param.setCompressionQuality(QUALITY);
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), param);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
