package spindlebook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.backup.Commands;
import spindlebook.log.Sha256;

/** The backups' page and the download, through the real server. */
class BackupPagesTest {
  @TempDir Path folder;
  private Path data;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() throws IOException {
    data = Files.createDirectory(folder.resolve("data"));
    shop = new Shop(data);
    marmot = new Marmot(shop);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  /** Presses the key and waits as its page does, by asking for it again. */
  private Page backUp() {
    Page page = shop.browser.follow(shop.get("/backups").is(200).form("/backups").send().is(303));
    while (page.headers().firstValue("Refresh").isPresent()) {
      page = shop.get("/backups").is(200);
    }
    return page;
  }

  private List<Path> copies() throws IOException {
    try (var files = Files.list(data.resolve("backups/books"))) {
      return files.sorted().toList();
    }
  }

  @Test
  void pressed_it_copies_the_book_and_says_when_and_how_far() throws IOException {
    Page before = shop.get("/backups").is(200);
    assertTrue(before.text().contains("On this machine No copy yet"), before.text());
    Page page = backUp();
    assertEquals(1, copies().size());
    assertArrayEquals(Files.readAllBytes(shop.log()), Files.readAllBytes(copies().get(0)));
    assertTrue(page.text().contains("Last good copy 4 May 2031, "), page.text());
    String all = " · " + shop.entries() + " entries · all of the book";
    assertTrue(page.text().contains(all), page.text());
    assertTrue(page.text().contains("1 copy · "), page.text());
    assertTrue(page.text().contains(data.resolve("backups").toString()), page.text());

    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    assertFalse(shop.get("/backups").text().contains("all of the book"));
    assertTrue(backUp().text().contains("2 copies · "));
  }

  @Test
  void cars_say_nothing_of_backups_but_when_there_is_no_good_one() throws IOException {
    backUp();
    for (String page : List.of("/cars", "/cars/" + marmot.car)) {
      assertFalse(shop.get(page).text().contains("No good backup"), page);
    }
    for (String page : List.of("/cars", "/cars/" + marmot.car + "/more")) {
      assertTrue(shop.get(page).html().contains("<a href=\"/backups\">Backups</a>"), page);
    }
    Files.delete(copies().get(0));
    Files.delete(data.resolve("backups/books"));
    Files.writeString(data.resolve("backups/books"), "a file in its way");
    Page page = backUp();
    assertTrue(page.text().contains("No good backup of this book."), page.text());
    assertTrue(page.text().contains("cannot be used: "), page.text());
    for (String first : List.of("/cars", "/cars/" + marmot.car)) {
      assertTrue(shop.get(first).text().contains("No good backup of this book."), first);
    }
  }

  private HttpResponse<InputStream> download(Browser browser) throws Exception {
    URI zip = URI.create("http://127.0.0.1:" + shop.port() + "/backups/book.zip");
    HttpRequest request = HttpRequest.newBuilder(zip).header("Cookie", browser.cookie()).build();
    return HttpClient.newHttpClient().send(request, HttpResponse.BodyHandlers.ofInputStream());
  }

  @Test
  void the_download_is_a_zip_with_the_book_and_its_photos_that_restores() throws Exception {
    byte[] picture = "a picture".getBytes(StandardCharsets.UTF_8);
    String photo = Sha256.hex(picture);
    Files.createDirectories(data.resolve("photos"));
    Files.write(data.resolve("photos/" + photo + ".jpg"), picture);
    String lost = Sha256.hex("lost".getBytes(StandardCharsets.UTF_8));
    Files.writeString(data.resolve("photos/" + lost + ".jpg"), "no picture any more");
    for (String named : List.of(photo, lost)) {
      shop.app()
          .bookFile
          .append(
              spindlebook.log.Bodies.draft(
                  "photo-" + named.substring(0, 4),
                  0,
                  "Sam",
                  new spindlebook.entry.Content.Photo(
                      marmot.left, null, null, named, 1, 1, null, null)));
    }
    Path file = folder.resolve("taken-home.zip");
    HttpResponse<InputStream> answer = download(shop.browser);
    assertEquals(200, answer.statusCode());
    assertEquals("application/zip", answer.headers().firstValue("Content-Type").orElse(""));
    assertTrue(
        answer
            .headers()
            .firstValue("Content-Disposition")
            .orElse("")
            .matches("attachment; filename=\"spindlebook-2031-05-04T\\d{6}Z-n\\d+\\.zip\""));
    try (InputStream body = answer.body()) {
      Files.copy(body, file);
    }
    try (ZipFile zip = new ZipFile(file.toFile())) {
      assertArrayEquals(
          Files.readAllBytes(shop.log()),
          zip.getInputStream(zip.getEntry("book.jsonl")).readAllBytes());
      assertArrayEquals(
          picture, zip.getInputStream(zip.getEntry("photos/" + photo + ".jpg")).readAllBytes());
      String readMe =
          new String(
              zip.getInputStream(zip.getEntry("read-me.txt")).readAllBytes(),
              StandardCharsets.UTF_8);
      assertTrue(readMe.endsWith("missing or damaged:\n" + lost), readMe);
      assertEquals(3, zip.size());
    }
    Path fresh = folder.resolve("new-machine");
    Commands.restore(fresh, file, false, java.time.Clock.systemUTC(), new ArrayList<>()::add);
    assertArrayEquals(
        Files.readAllBytes(shop.log()), Files.readAllBytes(fresh.resolve("book.jsonl")));
    assertArrayEquals(picture, Files.readAllBytes(fresh.resolve("photos/" + photo + ".jpg")));
  }

  @Test
  void who_may_only_look_sees_how_they_stand_and_downloads_nothing() throws Exception {
    Browser looker = shop.looker();
    Page page = looker.get("/backups").is(200);
    assertTrue(page.text().contains("On this machine"), page.text());
    assertFalse(page.text().contains("Back up now"), page.text());
    assertFalse(page.text().contains("Download"), page.text().replace("can download it", ""));
    assertEquals(403, download(looker).statusCode());
    assertEquals(401, download(shop.stranger()).statusCode());
  }

  @Test
  void a_damaged_book_is_not_handed_out() throws Exception {
    String book = Files.readString(shop.log());
    Files.writeString(shop.log(), book.replaceFirst("\"who\":\"Sam\"", "\"who\":\"Pat\""));
    Page page = shop.get("/backups/book.zip").is(503);
    assertTrue(page.text().contains("of book.jsonl is damaged"), page.text());
    Files.writeString(shop.log(), book);
  }

  @Test
  void the_pages_are_whole() {
    EveryPageTest.whole(shop.get("/backups"));
    EveryPageTest.whole(backUp());
  }
}
