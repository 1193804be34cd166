package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a page and all that it cannot be seen without weighs as it comes over the wire: as much as a
 * first flight of packets carries (common practice, no source).
 */
class FirstScreenTest {
  private static final int MOST = 14 * 1024;

  private static final Pattern NEEDS =
      Pattern.compile("<link rel=\"stylesheet\" href=\"([^\"]*)\">|<script[^>]* src=\"([^\"]*)\"");
  private static final Pattern IMPORTS =
      Pattern.compile("(?:import|from) ?[\"']\\./([^\"']+)[\"']");

  private record Body(int wireBytes, String text) {}

  private final Map<String, Body> fetched = new HashMap<>();

  @Test
  void no_page_weighs_more_than_one_flight_of_packets(@TempDir Path folder)
      throws IOException, InterruptedException {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop).prepared().measured().measuredOn();
      marmot.startRound(marmot.left, Map.of());
      marmot.startRound(marmot.right, Map.of());
      String signOffs = "/cars/" + marmot.car + "/sign-offs";
      shop.get(signOffs + "/new").form(signOffs).with("why", "only round the yard").keep();
      marmot.adjust(marmot.right, "limit-strap", "17");
      Collection<Page> pages = Crawl.from(shop.browser, "/", "/cars");
      List<String> lines = weighed(shop, pages);
      List<String> heavy = lines.stream().filter(FirstScreenTest::heavy).toList();
      System.out.println("first screens, heaviest first:");
      lines.stream()
          .sorted(Comparator.reverseOrder())
          .filter(l -> !l.contains("?at=") || heavy.contains(l))
          .limit(60)
          .forEach(System.out::println);
      assertTrue(lines.size() > 100, "pages: " + lines.size());
      assertEquals(List.of(), heavy.stream().limit(5).toList());
    }
  }

  /** A line for each page, its bytes first. */
  List<String> weighed(Shop shop, Collection<Page> pages) throws IOException, InterruptedException {
    List<String> lines = new ArrayList<>();
    for (Page page : pages) {
      // A table is taken away as a file, not waited for as a screen.
      if (page.status() != 200 || !EveryPageTest.isPage(page)) {
        continue;
      }
      int html = fetch(shop, page.path()).wireBytes();
      int bytes = html;
      for (String file : needed(shop, page.path())) {
        bytes += fetch(shop, file).wireBytes();
      }
      lines.add(String.format("%6d bytes, %5d of them the page: %s", bytes, html, page.path()));
    }
    return lines;
  }

  static boolean heavy(String line) {
    return Integer.parseInt(line.substring(0, 6).strip()) > MOST;
  }

  /** The stylesheet, the modules, and what these import. */
  private Set<String> needed(Shop shop, String page) throws IOException, InterruptedException {
    Set<String> files = new LinkedHashSet<>();
    for (var found : NEEDS.matcher(fetch(shop, page).text()).results().toList()) {
      need(shop, found.group(1) == null ? found.group(2) : found.group(1), files);
    }
    assertTrue(files.size() >= 2, page + " needs " + files);
    return files;
  }

  private void need(Shop shop, String file, Set<String> files)
      throws IOException, InterruptedException {
    if (files.add(file) && file.endsWith(".js")) {
      for (var found : IMPORTS.matcher(fetch(shop, file).text()).results().toList()) {
        need(shop, "/static/" + found.group(1), files);
      }
    }
  }

  private Body fetch(Shop shop, String path) throws IOException, InterruptedException {
    if (!fetched.containsKey(path)) {
      HttpResponse<byte[]> answer =
          HttpClient.newHttpClient()
              .send(
                  HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + shop.port() + path))
                      .header("Cookie", shop.browser.cookie())
                      .header("Accept-Encoding", "gzip")
                      .build(),
                  HttpResponse.BodyHandlers.ofByteArray());
      assertEquals(200, answer.statusCode(), path);
      byte[] body = answer.body();
      boolean zipped = answer.headers().firstValue("Content-Encoding").orElse("").equals("gzip");
      byte[] plain =
          zipped ? new GZIPInputStream(new ByteArrayInputStream(body)).readAllBytes() : body;
      fetched.put(path, new Body(body.length, new String(plain, StandardCharsets.UTF_8)));
    }
    return fetched.get(path);
  }
}
