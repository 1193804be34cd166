package spindlebook.photo;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Photos as phones send them, and files made to do harm. */
class PictureTest {
  private static final long MB = 1024 * 1024;

  @TempDir Path folder;

  private Picture of(byte[] sent) throws IOException {
    try {
      return Picture.of(new ByteArrayInputStream(sent), folder);
    } finally {
      try (Stream<Path> left = Files.list(folder)) {
        assertEquals(List.of(), left.toList(), "nothing is left of what was on its way");
      }
    }
  }

  private static BufferedImage read(byte[] jpeg) throws IOException {
    return ImageIO.read(new ByteArrayInputStream(jpeg));
  }

  /**
   * Red at the beginning of its first row, blue at its end, green below the red one, else white.
   */
  private static BufferedImage corners(int wide, int high) {
    BufferedImage image = new BufferedImage(wide, high, BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Color.WHITE);
    g.fillRect(0, 0, wide, high);
    g.setColor(Color.RED);
    g.fillRect(0, 0, wide / 4, high / 4);
    g.setColor(Color.BLUE);
    g.fillRect(wide - wide / 4, 0, wide / 4, high / 4);
    g.setColor(Color.GREEN);
    g.fillRect(0, high - high / 4, wide / 4, high / 4);
    g.dispose();
    return image;
  }

  private static byte[] jpeg(BufferedImage image, boolean progressive) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ImageWriteParam param = writer.getDefaultWriteParam();
    param.setProgressiveMode(
        progressive ? ImageWriteParam.MODE_DEFAULT : ImageWriteParam.MODE_DISABLED);
    try (MemoryCacheImageOutputStream out = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(out);
      writer.write(null, new IIOImage(image, null, null), param);
    }
    writer.dispose();
    return bytes.toByteArray();
  }

  private static byte[] with(byte[] jpeg, int marker, byte[] content) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.write(jpeg, 0, 2);
    out.write(0xFF);
    out.write(marker);
    out.write((content.length + 2) >>> 8);
    out.write(content.length + 2);
    out.writeBytes(content);
    out.write(jpeg, 2, jpeg.length - 2);
    return out.toByteArray();
  }

  /** An Exif block with the orientation, and a place behind it. */
  private static byte[] exif(int orientation, boolean littleEndian) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    out.writeBytes("Exif\0\0".getBytes(StandardCharsets.US_ASCII));
    int[] big = {
      'M', 'M', 0, 42, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0
    };
    int[] little = {
      'I', 'I', 42, 0, 8, 0, 0, 0, 1, 0, 0x12, 0x01, 3, 0, 1, 0, 0, 0, orientation, 0, 0, 0
    };
    for (int b : littleEndian ? little : big) {
      out.write(b);
    }
    out.writeBytes("GPS 48.8584 2.2945".getBytes(StandardCharsets.US_ASCII));
    return out.toByteArray();
  }

  /**
   * Where the stored picture's first pixel, the end of its first row and the beginning of its last
   * row are seen, by the orientations of Exif 2.3 (from memory): t top, b bottom, l left, r right.
   */
  @ParameterizedTest
  @CsvSource({
    "1, tl, tr, bl", "2, tr, tl, br", "3, br, bl, tr", "4, bl, br, tl",
    "5, tl, bl, tr", "6, tr, br, tl", "7, br, tr, bl", "8, bl, tl, br"
  })
  void a_photo_stands_upright_however_the_camera_was_held(
      int orientation, String red, String blue, String green) throws IOException {
    for (boolean little : new boolean[] {true, false}) {
      byte[] sent = with(jpeg(corners(400, 240), false), 0xE1, exif(orientation, little));
      Picture picture = of(sent);
      boolean turned = orientation >= 5;
      assertEquals(turned ? 240 : 400, picture.widthPx());
      assertEquals(turned ? 400 : 240, picture.heightPx());
      BufferedImage seen = read(picture.jpeg());
      assertEquals(picture.widthPx(), seen.getWidth());
      assertColour(Color.RED, seen, red);
      assertColour(Color.BLUE, seen, blue);
      assertColour(Color.GREEN, seen, green);
      assertColour(Color.RED, read(picture.small()), red);
    }
  }

  private static void assertColour(Color expected, BufferedImage image, String where) {
    int x = where.endsWith("l") ? image.getWidth() / 10 : image.getWidth() * 9 / 10;
    int y = where.startsWith("t") ? image.getHeight() / 10 : image.getHeight() * 9 / 10;
    Color seen = new Color(image.getRGB(x, y));
    int off =
        Math.abs(seen.getRed() - expected.getRed())
            + Math.abs(seen.getGreen() - expected.getGreen())
            + Math.abs(seen.getBlue() - expected.getBlue());
    assertTrue(off < 60, where + ": " + seen);
  }

  @Test
  void nothing_is_left_of_place_maker_comment_or_profile() throws IOException {
    byte[] sent = jpeg(corners(300, 200), false);
    sent = with(sent, 0xE1, exif(1, true));
    sent = with(sent, 0xFE, "COMMENT 48.8584".getBytes(StandardCharsets.US_ASCII));
    sent = with(sent, 0xED, "Photoshop 3.0 48.8584".getBytes(StandardCharsets.US_ASCII));
    sent = with(sent, 0xE2, "ICC_PROFILE 48.8584".getBytes(StandardCharsets.US_ASCII));
    Picture picture = of(sent);
    for (byte[] kept : List.of(picture.jpeg(), picture.small())) {
      String text = new String(kept, StandardCharsets.ISO_8859_1);
      for (String word : List.of("Exif", "GPS", "48.8584", "ICC", "Photoshop", "COMMENT")) {
        assertFalse(text.contains(word), word);
      }
    }
  }

  @Test
  void a_large_photo_is_made_smaller_and_its_small_one_fits_a_list() throws IOException {
    Picture picture = of(jpeg(corners(4000, 3000), false));
    assertEquals(2000, picture.widthPx());
    assertEquals(1500, picture.heightPx());
    BufferedImage small = read(picture.small());
    assertTrue(small.getWidth() <= Picture.SMALL_SIDE_PX && small.getWidth() > 180);
    assertColour(Color.BLUE, small, "tr");
  }

  @Test
  void png_of_every_kind_is_kept_on_white() throws IOException {
    for (int type :
        new int[] {
          BufferedImage.TYPE_INT_ARGB,
          BufferedImage.TYPE_BYTE_GRAY,
          BufferedImage.TYPE_USHORT_GRAY,
          BufferedImage.TYPE_BYTE_INDEXED,
          BufferedImage.TYPE_BYTE_BINARY,
          BufferedImage.TYPE_3BYTE_BGR
        }) {
      BufferedImage image = new BufferedImage(60, 40, type);
      Graphics2D g = image.createGraphics();
      if (!image.getColorModel().hasAlpha()) {
        g.setColor(Color.WHITE);
        g.fillRect(0, 0, 60, 40);
      }
      g.setColor(Color.BLACK);
      g.fillRect(0, 0, 15, 10);
      g.dispose();
      ByteArrayOutputStream png = new ByteArrayOutputStream();
      assertTrue(ImageIO.write(image, "png", png));
      BufferedImage seen = read(of(png.toByteArray()).jpeg());
      assertColour(Color.BLACK, seen, "tl");
      assertColour(Color.WHITE, seen, "br");
    }
  }

  @Test
  void a_progressive_photo_is_kept() throws IOException {
    assertColour(Color.RED, read(of(jpeg(corners(400, 240), true)).jpeg()), "tl");
  }

  @Test
  void what_is_no_photo_is_refused_in_one_sentence() throws IOException {
    ByteArrayOutputStream gif = new ByteArrayOutputStream();
    ImageIO.write(corners(20, 20), "gif", gif);
    for (byte[] sent :
        List.of(
            new byte[0],
            "a".getBytes(StandardCharsets.US_ASCII),
            "<svg xmlns='http://www.w3.org/2000/svg'/>".getBytes(StandardCharsets.US_ASCII),
            gif.toByteArray(),
            new byte[] {(byte) 0xFF, (byte) 0xD8, 'n', 'o', 't', 'h', 'i', 'n', 'g'})) {
      assertEquals(
          "That is no photo that can be kept: send a JPEG or a PNG.",
          refused(sent),
          sent.length + "");
    }
  }

  @Test
  void a_photo_cut_off_anywhere_is_refused() throws IOException {
    byte[] jpeg = jpeg(corners(200, 200), false);
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(corners(200, 200), "png", png);
    for (byte[] whole : List.of(jpeg, png.toByteArray())) {
      for (int part = 1; part < 20; part++) {
        byte[] cut = Arrays.copyOf(whole, whole.length * part / 20);
        assertTrue(refused(cut).length() > 20);
      }
      assertEquals(
          "The photo ends before it is whole: send it again.",
          refused(Arrays.copyOf(whole, whole.length - 3)));
    }
  }

  @Test
  void bytes_turned_over_at_random_are_refused_or_kept_but_never_more() throws IOException {
    java.util.SplittableRandom random = new java.util.SplittableRandom(11);
    byte[] jpeg = with(jpeg(corners(120, 90), false), 0xE1, exif(6, true));
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    ImageIO.write(corners(120, 90), "png", png);
    int kept = 0;
    for (int i = 0; i < 300; i++) {
      byte[] broken = (i % 2 == 0 ? jpeg : png.toByteArray()).clone();
      for (int j = random.nextInt(1, 6); j > 0; j--) {
        broken[random.nextInt(2, broken.length)] = (byte) random.nextInt();
      }
      try {
        of(broken);
        kept++;
      } catch (PhotoRefused refused) {
        assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
      }
    }
    assertTrue(kept > 0 && kept < 300, "kept " + kept);
  }

  @Test
  void a_photo_with_a_profile_of_other_colours_is_drawn_without_it() throws IOException {
    for (int type : new int[] {BufferedImage.TYPE_3BYTE_BGR, BufferedImage.TYPE_BYTE_GRAY}) {
      byte[] plain = jpeg(new BufferedImage(60, 40, type), false);
      for (int space :
          new int[] {ColorSpace.CS_GRAY, ColorSpace.CS_LINEAR_RGB, ColorSpace.CS_CIEXYZ}) {
        ByteArrayOutputStream profile = new ByteArrayOutputStream();
        profile.writeBytes("ICC_PROFILE\0\1\1".getBytes(StandardCharsets.US_ASCII));
        profile.writeBytes(ICC_Profile.getInstance(space).getData());
        assertEquals(60, of(with(plain, 0xE2, profile.toByteArray())).widthPx());
      }
    }
  }

  private String refused(byte[] sent) {
    return assertThrows(PhotoRefused.class, () -> of(sent)).getMessage();
  }

  // --- memory

  private interface Step {
    void run() throws IOException;
  }

  private static void costsUnder64Mb(Step step) throws IOException {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadAllocatedBytes();
    step.run();
    long cost = threads.getCurrentThreadAllocatedBytes() - before;
    assertTrue(cost < 64 * MB, cost / MB + " MB");
  }

  @Test
  void a_photo_of_twelve_megapixels_costs_under_64_mb() throws IOException {
    byte[] sent = jpeg(corners(4000, 3000), false);
    costsUnder64Mb(() -> of(sent));
    byte[] progressive = jpeg(corners(4000, 3000), true);
    costsUnder64Mb(
        () -> {
          try {
            of(progressive);
          } catch (PhotoRefused refused) {
            assertTrue(refused.getMessage().contains("progressively"), refused.getMessage());
          }
        });
  }

  @Test
  void a_few_bytes_that_claim_to_be_a_field_of_pixels_cost_under_64_mb() throws IOException {
    byte[] jpeg = jpeg(corners(64, 64), false);
    for (int[] claimed :
        new int[][] {{65535, 65535}, {7300, 5400}, {16384, 2400}, {60000, 600}, {40, 60000}}) {
      byte[] bomb = claiming(jpeg, claimed[0], claimed[1]);
      costsUnder64Mb(() -> keptOrRefused(bomb));
    }
    assertTrue(refused(png(50_000, 50_000, 8, 2, 0)).contains("50000 by 50000 pixels"));
    costsUnder64Mb(() -> keptOrRefused(png(50_000, 50_000, 16, 6, 0)));
    costsUnder64Mb(() -> keptOrRefused(png(Integer.MAX_VALUE, Integer.MAX_VALUE, 16, 6, 0)));
    costsUnder64Mb(() -> keptOrRefused(png(-1, 5, 8, 0, 0)));
  }

  @Test
  void a_picture_that_packs_small_and_unpacks_large_costs_under_64_mb() throws IOException {
    // 36 megapixels of grey in 36 kB; 39 of sixteen-bit colour with a mask: 318 MB in 310 kB.
    byte[] grey = png(6000, 6000, 8, 0, 6000L * 6001);
    costsUnder64Mb(() -> assertEquals(1500, of(grey).widthPx()));
    byte[] deep = png(6300, 6300, 16, 6, 6300L * (8 * 6300 + 1));
    costsUnder64Mb(() -> keptOrRefused(deep));
    // More than the header promised, and a text that would unpack to a gigabyte.
    byte[] more = png(40, 40, 8, 0, 300_000_000L);
    costsUnder64Mb(() -> keptOrRefused(more));
  }

  @Test
  void a_text_inside_that_unpacks_to_a_hundred_megabytes_is_left_unread() throws IOException {
    ByteArrayOutputStream png = new ByteArrayOutputStream();
    BufferedImage palette = new BufferedImage(40, 40, BufferedImage.TYPE_BYTE_INDEXED);
    ImageIO.write(palette, "png", png);
    byte[] whole = png.toByteArray();
    ByteArrayOutputStream bomb = new ByteArrayOutputStream();
    bomb.write(whole, 0, 33);
    ByteArrayOutputStream text = new ByteArrayOutputStream();
    text.writeBytes("k\0\0".getBytes(StandardCharsets.US_ASCII));
    zeros(text, 100_000_000);
    chunk(bomb, "zTXt", text.toByteArray());
    bomb.write(whole, 33, whole.length - 33);
    costsUnder64Mb(() -> of(bomb.toByteArray()));
  }

  @Test
  void a_photo_of_endless_walks_over_itself_is_refused() throws IOException {
    byte[] progressive = jpeg(corners(200, 200), true);
    int lastScan = 0;
    for (int i = 0; i < progressive.length - 1; i++) {
      if ((progressive[i] & 255) == 0xFF && (progressive[i + 1] & 255) == 0xDA) {
        lastScan = i;
      }
    }
    ByteArrayOutputStream bomb = new ByteArrayOutputStream();
    bomb.write(progressive, 0, progressive.length - 2);
    for (int i = 0; i < 60; i++) {
      bomb.write(progressive, lastScan, progressive.length - 2 - lastScan);
    }
    bomb.write(0xFF);
    bomb.write(0xD9);
    assertTrue(refused(bomb.toByteArray()).startsWith("That is no photo"));
  }

  /** What the decoder collects of it is not on the heap, and so in no figure above. */
  @Test
  void a_large_photo_of_one_walk_over_one_of_its_colours_is_refused() throws IOException {
    byte[] jpeg = claiming(jpeg(corners(64, 64), false), 7300, 5400);
    int scan = marker(jpeg, 0xDA);
    assertEquals(3, jpeg[scan + 4]);
    ByteArrayOutputStream one = new ByteArrayOutputStream();
    one.write(jpeg, 0, scan);
    one.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xDA, 0, 8, 1, 1, 0, 0, 63, 0});
    one.write(jpeg, scan + 14, jpeg.length - scan - 14);
    assertTrue(refused(one.toByteArray()).contains("progressively"));
  }

  private void keptOrRefused(byte[] sent) throws IOException {
    try {
      of(sent);
    } catch (PhotoRefused refused) {
      assertTrue(refused.getMessage().endsWith("."), refused.getMessage());
    }
  }

  private static byte[] claiming(byte[] jpeg, int wide, int high) {
    byte[] bomb = jpeg.clone();
    int frame = marker(bomb, 0xC0);
    bomb[frame + 5] = (byte) (high >>> 8);
    bomb[frame + 6] = (byte) high;
    bomb[frame + 7] = (byte) (wide >>> 8);
    bomb[frame + 8] = (byte) wide;
    return bomb;
  }

  private static int marker(byte[] jpeg, int marker) {
    for (int i = 2; i < jpeg.length - 1; i++) {
      if ((jpeg[i] & 255) == 0xFF && (jpeg[i + 1] & 255) == marker) {
        return i;
      }
    }
    throw new AssertionError("no marker " + marker);
  }

  private static byte[] png(int wide, int high, int bits, int colour, long raw) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    DataOutputStream data = new DataOutputStream(out);
    data.writeLong(0x89504E470D0A1A0AL);
    ByteArrayOutputStream ihdr = new ByteArrayOutputStream();
    DataOutputStream header = new DataOutputStream(ihdr);
    header.writeInt(wide);
    header.writeInt(high);
    header.write(new byte[] {(byte) bits, (byte) colour, 0, 0, 0});
    chunk(out, "IHDR", ihdr.toByteArray());
    ByteArrayOutputStream idat = new ByteArrayOutputStream();
    zeros(idat, raw);
    chunk(out, "IDAT", idat.toByteArray());
    chunk(out, "IEND", new byte[0]);
    return out.toByteArray();
  }

  private static void zeros(ByteArrayOutputStream to, long bytes) throws IOException {
    byte[] some = new byte[1 << 16];
    try (DeflaterOutputStream packed = new DeflaterOutputStream(to)) {
      for (long left = bytes; left > 0; left -= some.length) {
        packed.write(some, 0, (int) Math.min(left, some.length));
      }
    }
  }

  private static void chunk(ByteArrayOutputStream to, String type, byte[] content)
      throws IOException {
    DataOutputStream out = new DataOutputStream(to);
    byte[] name = type.getBytes(StandardCharsets.US_ASCII);
    CRC32 crc = new CRC32();
    crc.update(name);
    crc.update(content);
    out.writeInt(content.length);
    out.write(name);
    out.write(content);
    out.writeInt((int) crc.getValue());
  }
}
