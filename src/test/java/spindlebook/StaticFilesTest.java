package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.web.StaticFiles;

/** What a browser may keep, and that it is small on the way. */
class StaticFilesTest {
  @TempDir Path folder;
  private Shop shop;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private HttpResponse<byte[]> zipped(String path) throws IOException, InterruptedException {
    return HttpClient.newHttpClient()
        .send(
            HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + shop.port() + path))
                .header("Accept-Encoding", "gzip")
                .header("Cookie", shop.browser.cookie())
                .build(),
            BodyHandlers.ofByteArray());
  }

  private static String unzip(byte[] bytes) throws IOException {
    try (InputStream in = new GZIPInputStream(new ByteArrayInputStream(bytes))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void a_file_is_kept_for_a_year_under_a_name_that_changes_with_it() {
    String href = StaticFiles.href("spindlebook.css");
    assertTrue(href.matches("/static/spindlebook\\.[0-9a-f]{8}\\.css"), href);
    Page file = shop.stranger().get(href).is(200);
    assertEquals(
        "public, max-age=31536000, immutable",
        file.headers().firstValue("Cache-Control").orElse(""));
    assertEquals("text/css;charset=utf-8", type(file));
    assertEquals(
        "text/javascript;charset=utf-8",
        type(shop.get(StaticFiles.href("save-as-typed.js")).is(200)));
  }

  private static String type(Page file) {
    return file.headers().firstValue("Content-Type").orElse("").replace(" ", "");
  }

  @Test
  void the_plain_name_leads_there_and_a_name_of_old_nowhere() {
    Page plain = shop.get("/static/spindlebook.css").is(302);
    assertEquals(StaticFiles.href("spindlebook.css"), plain.location());
    shop.get("/static/spindlebook.00000000.css").is(404);
    assertThrows(IllegalArgumentException.class, () -> StaticFiles.href("none.js"));
  }

  @Test
  void files_and_pages_come_zipped_to_who_takes_it() throws Exception {
    for (String path : new String[] {StaticFiles.href("spindlebook.css"), "/cars/new"}) {
      HttpResponse<byte[]> answer = zipped(path);
      assertEquals(200, answer.statusCode(), path);
      assertEquals("gzip", answer.headers().firstValue("Content-Encoding").orElse(""), path);
      String plain = shop.get(path).is(200).html().replaceAll("name=\"key\" value=\"[^\"]*\"", "");
      String same = unzip(answer.body()).replaceAll("name=\"key\" value=\"[^\"]*\"", "");
      assertEquals(plain, same, path);
      assertTrue(answer.body().length < plain.length() / 2, path);
    }
  }
}
