package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import io.javalin.router.Endpoint;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole table of addresses, as the program itself builds it, knocked at by those outside. */
class EveryRouteTest {
  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private int entries;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    entries = shop.entries();
  }

  @AfterEach
  void close() {
    assertEquals(entries, shop.entries());
    shop.close();
  }

  private List<String> routes(String method) {
    List<String> paths = new ArrayList<>();
    Javalin.create(
        config -> {
          Routes.add(config.routes, shop.app());
          config.unsafe.internalRouter.allHttpHandlers().stream()
              .map(parsed -> parsed.endpoint)
              .filter(e -> e.method.name().equals(method))
              .map(e -> real(e))
              .filter(p -> !p.matches("/(pair|static|healthz).*"))
              .forEach(paths::add);
        });
    return paths;
  }

  /** The address with what is really there in its gaps, where there is. */
  private String real(Endpoint endpoint) {
    return endpoint
        .path
        .replace("{car}", marmot.car)
        .replace("{corner}", marmot.left)
        .replace("{tool}", "tape")
        .replace("{point}", "tyre-frame")
        .replace("{adjuster}", "limit-strap")
        .replace("{entry}", marmot.car)
        .replaceAll("\\{[a-z]+}", "none");
  }

  @Test
  void no_page_is_shown_to_a_device_that_is_not_paired() {
    List<String> pages = routes("GET");
    assertTrue(pages.size() > 30, pages.toString());
    Browser stranger = shop.stranger();
    for (String page : pages) {
      Page answer = stranger.get(page);
      assertEquals(401, answer.status(), page);
      assertTrue(answer.text().contains("not paired"), page);
    }
    assertEquals(401, stranger.get("/nowhere").status());
    assertEquals(401, stranger.get("/favicon.ico").status());
  }

  @Test
  void a_header_that_names_another_method_makes_no_look_a_writing() {
    Browser looker = shop.looker();
    for (String header :
        List.of("X-HTTP-Method-Override", "x-http-method-override", "X-Method-Override")) {
      for (String action : routes("POST")) {
        String answer =
            Raw.ask(
                shop.port(),
                "GET " + action + "?key=k&name=Mole&may=keep&to=20&answer=so HTTP/1.1",
                "Host: 127.0.0.1:" + shop.port(),
                "Cookie: " + looker.cookie(),
                header + ": POST",
                "Content-Type: " + Browser.FORM);
        assertTrue(List.of(200, 403, 404, 405).contains(Raw.status(answer)), action + answer);
        assertFalse(answer.contains("/pair/"), action + answer);
      }
    }
    Page looked = looker.get("/cars").is(200);
    String answer =
        Raw.ask(
            shop.port(),
            "GET /cars HTTP/1.1",
            "Host: 127.0.0.1:" + shop.port(),
            "Cookie: " + looker.cookie(),
            "X-HTTP-Method-Override: POST");
    assertEquals(200, Raw.status(answer));
    assertTrue(answer.endsWith(looked.html()), "it is the look that it is");
  }

  @Test
  void nothing_is_written_from_a_device_that_is_not_paired_or_may_only_look() {
    List<String> actions = routes("POST");
    assertTrue(actions.size() > 25, actions.toString());
    Browser stranger = shop.stranger();
    Browser looker = shop.looker();
    for (String action : actions) {
      Map<String, String> form = Map.of("key", "k", "name", "Mole");
      assertEquals(401, stranger.post(action, form).status(), action);
      Page refused = looker.post(action, form);
      assertEquals(403, refused.status(), action);
      assertTrue(refused.text().contains("may only look"), action);
    }
  }
}
