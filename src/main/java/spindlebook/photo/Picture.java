package spindlebook.photo;

import java.awt.image.BufferedImage;
import java.awt.image.IndexColorModel;
import java.awt.image.Raster;
import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.FileImageInputStream;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

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

  static {
    // The disk is used where we say so, nowhere else.
    ImageIO.setUseCache(false);
  }

  /**
   * @param folder where the photo may lie while it is read
   * @throws PhotoRefused in one sentence, when it is none or cannot be kept
   */
  static Picture of(InputStream sent, Path folder) throws IOException {
    Path bare = Files.createTempFile(folder, "incoming", ".part");
    try {
      return of(strip(sent, bare), bare);
    } finally {
      Files.deleteIfExists(bare);
    }
  }

  private static PhotoHeader strip(InputStream sent, Path bare) throws IOException {
    try (InputStream in = new BufferedInputStream(sent, 1 << 16);
        OutputStream out = new BufferedOutputStream(Files.newOutputStream(bare), 1 << 16)) {
      long firstEight;
      try {
        firstEight = new DataInputStream(in).readLong();
      } catch (EOFException empty) {
        throw PhotoRefused.unknown();
      }
      if (PngCopy.starts(firstEight)) {
        return PngCopy.copy(in, out);
      }
      if (JpegCopy.starts(firstEight)) {
        return JpegCopy.copy(firstEight, in, out);
      }
      throw PhotoRefused.unknown();
    }
  }

  private static Picture of(PhotoHeader header, Path bare) throws IOException {
    BufferedImage upright = upright(decoded(header, bare), header.orientation(), MOST_SIDE_PX);
    return new Picture(
        upright.getWidth(),
        upright.getHeight(),
        written(upright),
        written(upright(upright, 1, SMALL_SIDE_PX)));
  }

  private static BufferedImage decoded(PhotoHeader header, Path bare) throws IOException {
    ImageReader reader = ImageIO.getImageReadersByFormatName(header.png() ? "png" : "jpeg").next();
    try (FileImageInputStream in = new FileImageInputStream(bare.toFile())) {
      reader.setInput(in, true, true);
      ImageReadParam param = reader.getDefaultReadParam();
      int step = step(header);
      param.setSourceSubsampling(step, step, 0, 0);
      return reader.read(0, param);
    } catch (IOException | RuntimeException broken) {
      // The decoders throw either when the pixels are not what the header promised.
      throw new PhotoRefused("The photo is damaged and cannot be read: take or send it again.");
    } finally {
      reader.dispose();
    }
  }

  /** Every how many pixels one is decoded. */
  static int step(PhotoHeader header) {
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

  /** Turned upright and made smaller by whole steps, each pixel the mean of those it stands for. */
  private static BufferedImage upright(BufferedImage from, int orientation, int mostSide) {
    int longer = Math.max(from.getWidth(), from.getHeight());
    int step = (longer + mostSide - 1) / mostSide;
    int wide = Math.max(1, from.getWidth() / step);
    int high = Math.max(1, from.getHeight() / step);
    boolean turned = orientation >= 5;
    BufferedImage to =
        new BufferedImage(turned ? high : wide, turned ? wide : high, BufferedImage.TYPE_3BYTE_BGR);
    Rows rows = new Rows(from);
    int[] sum = new int[3 * wide];
    int[] one = new int[3];
    for (int y = 0; y < high; y++) {
      java.util.Arrays.fill(sum, 0);
      int down = Math.min(step, from.getHeight() - y * step);
      for (int dy = 0; dy < down; dy++) {
        rows.add(y * step + dy, step, sum);
      }
      for (int x = 0; x < wide; x++) {
        int across = Math.min(step, from.getWidth() - x * step);
        int all = across * down;
        for (int c = 0; c < 3; c++) {
          one[c] = (sum[3 * x + c] + all / 2) / all;
        }
        int right = mirrored(orientation) ? wide - 1 - x : x;
        int below = upsideDown(orientation) ? high - 1 - y : y;
        to.getRaster().setPixel(turned ? below : right, turned ? right : below, one);
      }
    }
    return to;
  }

  /**
   * Whether the stored columns run from right to left, seen upright (before x and y are swapped).
   */
  private static boolean mirrored(int orientation) {
    return orientation == 2 || orientation == 3 || orientation == 7 || orientation == 8;
  }

  private static boolean upsideDown(int orientation) {
    return orientation == 3 || orientation == 4 || orientation == 6 || orientation == 7;
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

  /** Reads a decoded image row by row as eight bits of red, green and blue, on white. */
  private static final class Rows {
    private final Raster raster;
    private final IndexColorModel palette;
    private final int bands;
    private final int most;
    private final int[] row;

    Rows(BufferedImage image) {
      this.raster = image.getRaster();
      this.palette = image.getColorModel() instanceof IndexColorModel indexed ? indexed : null;
      this.bands = raster.getNumBands();
      this.most = (1 << raster.getSampleModel().getSampleSize(0)) - 1;
      this.row = new int[bands * raster.getWidth()];
    }

    /** Adds up a row, {@code step} pixels into one. */
    void add(int y, int step, int[] sum) {
      raster.getPixels(0, y, raster.getWidth(), 1, row);
      for (int x = 0; x < raster.getWidth() && x / step < sum.length / 3; x++) {
        int alpha = alpha(x);
        for (int c = 0; c < 3; c++) {
          sum[x / step * 3 + c] += 255 + (colour(x, c) - 255) * alpha / 255;
        }
      }
    }

    private int alpha(int x) {
      if (palette != null) {
        return palette.getAlpha(row[x]);
      }
      return bands == 2 || bands == 4 ? eight(row[x * bands + bands - 1]) : 255;
    }

    private int colour(int x, int c) {
      if (palette == null) {
        return eight(row[x * bands + (bands < 3 ? 0 : c)]);
      }
      return switch (c) {
        case 0 -> palette.getRed(row[x]);
        case 1 -> palette.getGreen(row[x]);
        default -> palette.getBlue(row[x]);
      };
    }

    private int eight(int sample) {
      return most == 255 ? sample : (int) (sample * 255L / most);
    }
  }
}
