package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.page.FormKey;
import spindlebook.web.KeptPages;

/** A page is written once for all who ask, until something is written in the book. */
class KeptPagesTest {
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

  @Test
  void a_form_shown_twice_has_another_key_each_time_and_both_are_kept() {
    Marmot marmot = new Marmot(shop);
    String page = "/cars/" + marmot.car + "/to-do";
    Page first = shop.get(page).is(200);
    Page second = shop.get(page).is(200);
    assertNotEquals(first.form(page).value("key"), second.form(page).value("key"));
    first.form(page).with("words", "grease the lower ball").keep();
    second.form(page).with("words", "look at the left strap").keep();
    String text = shop.get(page).is(200).text();
    assertTrue(text.contains("grease the lower ball"), text);
    assertTrue(text.contains("look at the left strap"), text);
  }

  @Test
  void what_was_written_is_on_every_page_that_was_asked_for_before() {
    Marmot marmot = new Marmot(shop);
    String corner = "/corners/" + marmot.left;
    List<String> pages = List.of(corner + "/rounds", "/cars/" + marmot.car + "/book");
    List<String> before = new ArrayList<>();
    pages.forEach(page -> before.add(plain(shop.get(page).is(200))));
    String round = marmot.startRound(marmot.left, Map.of());
    for (int i = 0; i < pages.size(); i++) {
      Page now = shop.get(pages.get(i)).is(200);
      assertFalse(before.get(i).equals(plain(now)), pages.get(i));
    }
    assertTrue(shop.get(corner + "/rounds").is(200).html().contains(round));
  }

  @Test
  void a_page_kept_is_the_page_written_anew() {
    Marmot marmot = new Marmot(shop);
    marmot.startRound(marmot.left, Map.of());
    for (String page :
        List.of(
            "/cars/" + marmot.car,
            "/corners/" + marmot.left,
            "/corners/" + marmot.left + "/telltales",
            "/cars/" + marmot.car + "/use")) {
      Page written = shop.get(page).is(200);
      assertEquals(plain(written), plain(shop.get(page).is(200)), page);
      assertEquals(
          written.headers().firstValue("Content-Type"),
          shop.get(page).headers().firstValue("Content-Type"));
    }
  }

  /** Whatever makes up addresses, what is kept has a bound. */
  @Test
  void only_so_much_is_kept_and_what_nobody_asks_for_goes_first() throws Exception {
    AtomicLong state = new AtomicLong();
    AtomicInteger written = new AtomicInteger();
    KeptPages kept = new KeptPages(state::get);
    String line = "a line of it ".repeat(20_000);
    Javalin server =
        Javalin.create(
                config -> {
                  config.startup.showJavalinBanner = false;
                  config.jetty.host = "127.0.0.1";
                  config.jetty.port = 0;
                  config.routes.get(
                      "/page",
                      kept.page(
                          ctx -> {
                            written.incrementAndGet();
                            String key = FormKey.fresh(0).key();
                            ctx.result(key + line + key);
                          }));
                })
            .start();
    try {
      Browser browser = new Browser(server.port(), "Sam");
      String first = browser.get("/page?i=0").is(200).html();
      String again = browser.get("/page?i=0").is(200).html();
      assertEquals(1, written.get());
      assertEquals(first.length(), again.length());
      assertFalse(again.contains(first.substring(0, 14)));
      assertEquals(again.substring(0, 14), again.substring(again.length() - 14));
      for (int i = 1; i <= 20; i++) {
        browser.get("/page?i=" + i).is(200);
      }
      browser.get("/page?i=20").is(200);
      assertEquals(21, written.get());
      browser.get("/page?i=0").is(200);
      assertEquals(22, written.get());
      state.incrementAndGet();
      browser.get("/page?i=20").is(200);
      assertEquals(23, written.get());
    } finally {
      server.stop();
    }
  }

  private static String plain(Page page) {
    return page.html().replaceAll("name=\"key\" value=\"[a-z0-9]{14}\"", "name=\"key\"");
  }
}
