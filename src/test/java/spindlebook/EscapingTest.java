package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What people type is shown as they typed it and does nothing. */
class EscapingTest {
  private static final String EVIL = "<script>alert(1)</script>\"'><img src=x onerror=y>&amp;";

  @Test
  void what_is_typed_comes_back_as_text_on_every_page(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      String left = "/corners/" + marmot.left;
      marmot.send("/cars/" + marmot.car + "/details", Map.of("name", EVIL, "note", EVIL));
      String round =
          marmot.startRound(
              marmot.left, Map.of("who", "<b>\"'Sam", "pressure", "<i>\"'", "note", EVIL));
      Form height =
          marmot
              .heightForm(round, "in-between", "20 3/4")
              .with("mark", "31 9/16")
              .with("label", "<u>\"'low&lt;");
      height.keep();
      String reading = marmot.read(height.key(), "straight", Marmot.SHOCK_ARM, "1/2");
      Marmot.send(
          shop.get("/readings/" + reading + "/correct"),
          "/readings/" + reading + "/correct",
          Map.of("value", "5/8", "reason", EVIL));
      marmot.adjust(marmot.left, "shock", EVIL);
      String action = left + "/adjustments/tyre";
      Page would =
          shop.get(action)
              .form(action + "/would-move")
              .with("to", EVIL)
              .with("why", EVIL)
              .send()
              .is(200);
      harmless(would);
      would.form(action).keep();
      marmot.send(left + "/watch-points/tyre-frame", Map.of("name", EVIL));
      Form point =
          shop.get(left + "/watch-points/new")
              .form(left + "/watch-points")
              .with("place", "shock-frame")
              .with("name", EVIL + "2")
              .with("least", "1/4");
      point.keep();
      marmot.send(left + "/adjusters/rack", Map.of("name", EVIL));
      marmot.send("/cars/" + marmot.car + "/tools/tape", Map.of("name", EVIL));
      String tools = "/cars/" + marmot.car + "/tools/new";
      shop.get(tools)
          .form(tools)
          .with("name", EVIL + "3")
          .with("use", "gaps")
          .with("graduation", "1/64")
          .keep();
      String happenings = "/cars/" + marmot.car + "/happenings";
      shop.get(happenings + "/new")
          .form(happenings)
          .with("what", "driven")
          .with("words", EVIL)
          .keep();
      String taken = marmot.read(height.key(), "straight", Marmot.STRAP, "18");
      String back = "/entries/" + taken + "/take-back";
      shop.get("/entries/" + taken).form(back).with("reason", EVIL).keep();

      String signOffs = "/cars/" + marmot.car + "/sign-offs";
      shop.get(signOffs + "/new").form(signOffs).with("why", EVIL).with("who", "<b>\"'Sam").keep();
      String toDo = "/cars/" + marmot.car + "/to-do";
      shop.get(toDo).form(toDo).with("words", EVIL).keep();

      Browser other = shop.stranger();
      String name = EVIL.substring(0, 40);
      String link = shop.browser.post("/devices/new-link", Map.of("may", "keep")).is(200).linkIn();
      harmless(other.post(link, Map.of("name", EVIL)).is(422));
      other.pair(link, name);
      Page devices = shop.get("/devices").is(200);
      assertTrue(devices.text().contains(name), devices.text());
      other.post("/cars/" + marmot.car + "/details", Map.of("name", EVIL)).is(303);
      harmless(other.get("/pair/" + encoded(EVIL)).is(410));
      harmless(other.post("/pair", Map.of("code", EVIL)).is(422));

      int seen = 0;
      for (Page page : Crawl.from(shop.browser, "/cars", "/cars/" + marmot.car + "/book")) {
        assertTrue(Set.of(200, 302).contains(page.status()), page.path());
        if (isTable(page)) {
          assertTrue(
              page.headers().firstValue("Content-Disposition").orElse("").startsWith("attachment"),
              page.path());
          assertEquals("nosniff", page.headers().firstValue("X-Content-Type-Options").orElse(""));
        } else if (!page.path().startsWith("/static/")) {
          harmless(page);
          seen += page.text().contains(EVIL) ? 1 : 0;
        }
      }
      assertTrue(seen > 10, "shown as typed on " + seen);
    }
  }

  @Test
  void what_is_refused_comes_back_as_text_too(@TempDir Path folder) {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop);
      String round = marmot.startRound(marmot.left, Map.of());
      Page height =
          marmot
              .heightForm(round, "ride", EVIL)
              .with("mark", EVIL)
              .with("label", EVIL)
              .send()
              .is(422);
      harmless(height);
      assertEquals(EVIL, height.form("/rounds/" + round + "/heights").value("spindle"));
      for (String address :
          new String[] {"given", "adjusters/limit-strap", "watch-points/tyre-frame"}) {
        String action = "/corners/" + marmot.left + "/" + address;
        Form form = shop.get(action).form(action);
        for (String name : form.values().keySet()) {
          if (!Set.of("key", "after", "unit", "more").contains(name)) {
            form = form.with(name, EVIL);
          }
        }
        harmless(form.send().is(422));
      }
      String q = encoded(EVIL);
      for (String path :
          new String[] {
            "/corners/" + marmot.left + "/adjustments/limit-strap?to=" + q,
            "/rounds/" + round + "/heights/new?name=" + q,
            "/corners/" + marmot.left + "/rounds/new?again=1&change=" + q,
            "/cars/" + marmot.car + "/book?kind=" + q + "&corner=" + q + "&adjuster=" + q
          }) {
        harmless(shop.get(path).is(200));
      }
      harmless(shop.browser.post("/cars", Map.of("name", "", "key", EVIL, "note", EVIL)));
    }
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  /**
   * A table for a spreadsheet, which holds what was typed as it is and is never shown as a page.
   */
  private static boolean isTable(Page page) {
    return page.headers().firstValue("Content-Type").orElse("").startsWith("text/csv");
  }

  private static void harmless(Page page) {
    String html = page.html();
    assertFalse(html.contains("<script>"), page.path());
    assertFalse(html.contains("<img"), page.path());
    assertFalse(html.contains("<b>\"'Sam") || html.contains("<u>\"'") || html.contains("<i>\"'"));
    for (Form form : page.forms()) {
      form.values().keySet().forEach(name -> assertTrue(name.matches("[A-Za-z0-9-]+"), name));
    }
    // A quote that ends an attribute early leaves a tag with an attribute of its own.
    assertFalse(
        java.util.regex.Pattern.compile("<[a-z][^>\"]*(\"[^\"]*\"[^>\"]*)*\\sonerror")
            .matcher(html)
            .find(),
        page.path());
  }
}
