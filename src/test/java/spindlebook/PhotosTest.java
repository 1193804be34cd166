package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Photos, sent to the real server as a phone sends them. */
class PhotosTest {
  private static final String TYPE = "multipart/form-data; boundary=cut-here";

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String photos;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    photos = "/corners/" + marmot.left + "/photos";
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private static byte[] jpeg(Color colour) throws IOException {
    BufferedImage image = new BufferedImage(640, 480, BufferedImage.TYPE_INT_RGB);
    var g = image.createGraphics();
    g.setColor(colour);
    g.fillRect(0, 0, 640, 480);
    g.dispose();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(image, "jpeg", bytes);
    return bytes.toByteArray();
  }

  private static byte[] parts(Form form, byte[] file) {
    return parts(form, new byte[0], file);
  }

  /** Both boxes of the form. */
  private static byte[] parts(Form form, byte[] taken, byte[] chosen) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    form.values()
        .forEach(
            (name, value) -> {
              if (!name.equals("photo")) {
                text(
                    out,
                    "--cut-here\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n");
                text(out, value + "\r\n");
              }
            });
    for (byte[] content : List.of(taken, chosen)) {
      text(
          out,
          "--cut-here\r\nContent-Disposition: form-data; name=\"photo\"; filename=\"../../x.jpg\""
              + "\r\nContent-Type: image/jpeg\r\n\r\n");
      out.writeBytes(content);
      text(out, "\r\n");
    }
    text(out, "--cut-here--\r\n");
    return out.toByteArray();
  }

  private static void text(ByteArrayOutputStream out, String text) {
    out.writeBytes(text.getBytes(StandardCharsets.UTF_8));
  }

  private Form form() {
    return shop.get(photos).is(200).form(photos);
  }

  private Page send(Form form, byte[] file) {
    return send(shop.browser, photos, form, file);
  }

  static Page send(Browser browser, String photos, Form form, byte[] file) {
    return browser.ask("POST", photos, TYPE, BodyPublishers.ofByteArray(parts(form, file)));
  }

  private List<String> files() throws IOException {
    if (!Files.exists(folder.resolve("photos"))) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(folder.resolve("photos"))) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  private static List<String> pictures(Page page) {
    Matcher found = Pattern.compile("<img src=\"([^\"]+)\"").matcher(page.html());
    return found.results().map(m -> m.group(1)).toList();
  }

  @Test
  void a_photo_lies_beside_the_book_named_by_its_own_hash_and_is_shown() throws Exception {
    Form form = form().with("words", "the tab").with("of", "point.tyre-frame");
    send(form, jpeg(Color.RED)).is(303);
    List<String> files = files();
    assertEquals(2, files.size(), files.toString());
    String full = files.get(0);
    byte[] kept = Files.readAllBytes(folder.resolve("photos").resolve(full));
    byte[] hash = MessageDigest.getInstance("SHA-256").digest(kept);
    assertEquals(HexFormat.of().formatHex(hash) + ".jpg", full);
    String line = shop.lines().get(shop.lines().size() - 1);
    assertTrue(line.contains("\"file\":\"" + full.replace(".jpg", "\"")), line);

    Page page = shop.get(photos).is(200);
    assertTrue(page.text().contains("left front · photo · tyre to frame: the tab"), page.text());
    String small = pictures(page).get(0);
    assertEquals("/photos/" + full.replace(".jpg", ".small.jpg"), small);
    for (String address : List.of(small, "/photos/" + full)) {
      Page picture = shop.get(address).is(200);
      assertEquals("image/jpeg", picture.headers().firstValue("Content-Type").orElseThrow());
      assertEquals(
          "private, max-age=31536000, immutable",
          picture.headers().firstValue("Cache-Control").orElseThrow());
      assertEquals("nosniff", picture.headers().firstValue("X-Content-Type-Options").orElseThrow());
      assertEquals(401, shop.stranger().get(address).status());
    }
    shop.reopen();
    assertEquals(List.of(small), pictures(shop.get(photos)));
  }

  @Test
  void the_same_form_sent_twice_is_one_photo() throws IOException {
    Form form = form();
    send(form, jpeg(Color.RED)).is(303);
    int entries = shop.entries();
    send(form, jpeg(Color.RED)).is(303);
    assertEquals(entries, shop.entries());
    send(form(), jpeg(Color.RED)).is(303);
    assertEquals(entries + 1, shop.entries());
    assertEquals(2, files().size(), "the same picture is one file");
  }

  @Test
  void another_photo_under_a_key_that_is_used_is_kept_under_its_own() throws IOException {
    Form form = form();
    send(form, jpeg(Color.RED)).is(303);
    int entries = shop.entries();
    send(form, jpeg(Color.BLUE)).is(303);
    send(form, jpeg(Color.BLUE)).is(303);
    assertEquals(entries + 1, shop.entries());
    assertEquals(2, pictures(shop.get(photos)).size());
  }

  @Test
  void before_and_after_a_change_stand_beside_each_other() throws IOException {
    marmot.adjust(marmot.left, "limit-strap", "18");
    String line = shop.lines().get(shop.lines().size() - 1);
    String key = line.replaceAll(".*\"key\":\"([^\"]+)\".*", "$1");
    Form form = form().with("of", "entry." + key);
    send(form.with("side", "before"), jpeg(Color.RED)).is(303);
    Page one = shop.get(photos).is(200);
    assertFalse(one.each("h2").toString().contains("limit strap"), one.text());
    send(form().with("of", "entry." + key).with("side", "after"), jpeg(Color.GREEN)).is(303);
    Page two = shop.get(photos).is(200);
    assertTrue(two.each("h2").contains("left front · limit strap to 18 in"), two.html());
    assertEquals(2, pictures(two).size());
    assertTrue(two.text().contains("photo before (of left front · limit strap"), two.text());

    Page wrong = send(form().with("side", "after"), jpeg(Color.RED)).is(422);
    assertEquals(1, BadInputTest.problems(wrong).size(), wrong.text());
    wrong = send(form().with("of", "entry." + marmot.right), jpeg(Color.RED)).is(422);
    assertEquals(1, BadInputTest.problems(wrong).size(), wrong.text());
  }

  @Test
  void a_reading_a_change_and_a_watch_point_show_their_own_photos_and_ask_for_the_next()
      throws IOException {
    marmot.adjust(marmot.left, "limit-strap", "18");
    String line = shop.lines().get(shop.lines().size() - 1);
    String change = line.replaceAll(".*\"key\":\"([^\"]+)\".*", "$1");
    String point = "/corners/" + marmot.left + "/watch-points/upper-rod-end";
    Page before = shop.get("/entries/" + change).is(200);
    assertEquals(List.of(), pictures(before));
    assertEquals(List.of(), pictures(shop.get(point).is(200)));

    String of = "?of=entry." + change;
    assertTrue(before.html().contains("href=\"" + photos + of + "\""), before.html());
    Form form = shop.get(photos + of).is(200).form(photos);
    assertEquals("entry." + change, form.value("of"));
    send(form.with("side", "after"), jpeg(Color.RED)).is(303);
    send(form().with("of", "point.upper-rod-end"), jpeg(Color.GREEN)).is(303);

    List<String> ofChange = pictures(shop.get("/entries/" + change).is(200));
    List<String> ofPoint = pictures(shop.get(point).is(200));
    assertEquals(1, ofChange.size());
    assertEquals(1, ofPoint.size());
    assertFalse(ofChange.equals(ofPoint));
    Matcher own =
        Pattern.compile("<figcaption><a class=\"more-link\" href=\"([^\"]+)\"")
            .matcher(shop.get(point).html());
    assertTrue(own.find());
    Page photo = shop.get(own.group(1)).is(200);
    assertEquals(ofPoint, pictures(photo));
    shop.get(photos + "?of=entry.no-such-entry").is(200);
  }

  @Test
  void what_is_no_photo_gets_one_sentence_and_leaves_nothing() throws IOException {
    int entries = shop.entries();
    byte[] whole = jpeg(Color.RED);
    for (byte[] bad :
        List.of(
            new byte[0],
            "not a photo at all".getBytes(StandardCharsets.UTF_8),
            java.util.Arrays.copyOf(whole, whole.length / 2))) {
      Page page = send(form().with("words", "what it shows"), bad).is(422);
      assertEquals(1, BadInputTest.problems(page).size(), page.text());
      assertEquals("what it shows", page.form(photos).value("words"));
    }
    assertEquals(422, form().send().status(), "sent as a form without a file");
    assertEquals(entries, shop.entries());
    assertEquals(List.of(), files());
  }

  @Test
  void neither_of_two_photos_sent_at_once_is_dropped_in_silence() throws IOException {
    byte[] both = parts(form().with("words", "two"), jpeg(Color.RED), jpeg(Color.BLUE));
    Page page = shop.browser.ask("POST", photos, TYPE, BodyPublishers.ofByteArray(both)).is(422);
    assertTrue(page.text().contains("Send one photo at a time"), page.text());
    assertTrue(page.html().contains("value=\"two\""), "what was typed stands there");
    assertEquals(List.of(), files());
  }

  @Test
  void more_than_twelve_megabytes_is_told_on_a_page() throws IOException {
    Page page = send(form(), new byte[13 * 1024 * 1024]);
    assertEquals(413, page.status());
    assertTrue(page.text().contains("12 MB"), page.text());
    byte[] long413 = parts(form(), new byte[13 * 1024 * 1024]);
    Page unannounced =
        shop.browser.ask(
            "POST",
            photos,
            TYPE,
            BodyPublishers.ofInputStream(() -> new java.io.ByteArrayInputStream(long413)));
    assertEquals(413, unannounced.status());
    assertEquals(List.of(), files());
  }

  @Test
  void a_disk_that_takes_no_photo_is_told_in_one_sentence_and_nothing_names_it()
      throws IOException {
    Files.writeString(folder.resolve("photos"), "no folder");
    int entries = shop.entries();
    Page page = send(form(), jpeg(Color.RED)).is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    assertTrue(page.text().contains("could not be written to the disk"), page.text());
    assertEquals(entries, shop.entries());
  }

  @Test
  void only_the_photo_address_takes_files_and_only_from_who_may_write() throws IOException {
    int entries = shop.entries();
    byte[] body = parts(form(), jpeg(Color.RED));
    for (String other : List.of("/cars", "/corners/" + marmot.left + "/given", photos + "/x")) {
      int status = shop.browser.ask("POST", other, TYPE, BodyPublishers.ofByteArray(body)).status();
      assertTrue(status == 415 || status == 404, other + " " + status);
    }
    Browser looker = shop.looker();
    looker.get(photos).is(200);
    Page refused = looker.ask("POST", photos, TYPE, BodyPublishers.ofByteArray(body)).is(403);
    assertTrue(refused.text().contains("may only look"), refused.text());
    Page stranger = shop.stranger().ask("POST", photos, TYPE, BodyPublishers.ofByteArray(body));
    assertEquals(401, stranger.status());
    Page broken =
        shop.browser.ask("POST", photos, "multipart/form-data", BodyPublishers.ofString("x"));
    assertTrue(broken.status() == 400 || broken.status() == 422, broken.text());
    assertEquals(entries, shop.entries());
    assertEquals(List.of(), files());
  }

  @Test
  void a_photo_whose_file_is_missing_says_so_in_its_place() throws IOException {
    send(form(), jpeg(Color.RED)).is(303);
    for (String file : files()) {
      Files.delete(folder.resolve("photos").resolve(file));
    }
    String page = shop.get(photos).is(200).html();
    Matcher small = Pattern.compile("src=\"(/photos/[^\"]+)\"").matcher(page);
    assertTrue(small.find(), page);
    String instead = shop.get(small.group(1)).is(302).location();
    assertTrue(shop.get(instead).is(200).html().contains("file is missing"), instead);
    shop.get(small.group(1).replace(".small", "")).is(404);
  }

  @Test
  void no_other_file_is_served_by_any_name() throws IOException {
    send(form(), jpeg(Color.RED)).is(303);
    Files.writeString(folder.resolve("photos").resolve("note.jpg"), "not ours");
    String real = files().get(0);
    for (String name :
        List.of(
            "note.jpg",
            "..%2Fbook.jsonl",
            "%2e%2e%2fdevices.json",
            "..",
            "book.jsonl",
            real.replace(".jpg", ""),
            real.replace(".jpg", ".JPG"),
            real + ".new",
            real + "%00.jpg",
            "0".repeat(64) + ".jpg")) {
      int status = shop.get("/photos/" + name).status();
      assertTrue(status == 404 || status == 400, name + " " + status);
    }
  }
}
