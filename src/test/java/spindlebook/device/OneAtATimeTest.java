package spindlebook.device;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pages that may take their time, asked for again before they are there. */
class OneAtATimeTest {
  @TempDir Path folder;
  private final HttpClient browser = HttpClient.newHttpClient();
  private final CountDownLatch worked = new CountDownLatch(1);
  private final CountDownLatch begun = new CountDownLatch(1);
  private Devices devices;
  private Javalin server;
  private String one;
  private String other;

  @BeforeEach
  void two_devices() {
    devices = new Devices(folder, Clock.systemUTC());
    one = devices.pair("phone", true);
    other = devices.pair("tablet", true);
    Door door = new Door(devices, Clock.systemUTC());
    server = Javalin.create(config -> pages(config.routes, door)).start("127.0.0.1", 0);
  }

  private void pages(io.javalin.config.RoutesConfig routes, Door door) {
    routes.before(door::before);
    routes.get(
        "/slow",
        door.oneAtATime(
            ctx -> {
              begun.countDown();
              worked.await();
              ctx.result("there");
            }));
    routes.get("/quick", door.oneAtATime(ctx -> ctx.result("there")));
  }

  @AfterEach
  void stop() {
    worked.countDown();
    server.stop();
    devices.close();
  }

  @Test
  void a_device_waits_its_turn_and_is_told_and_another_does_not_wait() throws Exception {
    CompletableFuture<HttpResponse<String>> slow = get("/slow", one);
    assertTrue(begun.await(10, TimeUnit.SECONDS));
    assertEquals("there", get("/quick", other).get().body());
    HttpResponse<String> second = get("/quick", one).get();
    assertEquals(429, second.statusCode());
    assertTrue(second.body().contains("One at a time"), second.body());
    worked.countDown();
    assertEquals("there", slow.get().body());
    assertEquals("there", get("/quick", one).get().body());
  }

  @Test
  void one_that_is_ready_in_a_moment_is_waited_for() throws Exception {
    CompletableFuture<HttpResponse<String>> slow = get("/slow", one);
    assertTrue(begun.await(10, TimeUnit.SECONDS));
    CompletableFuture<HttpResponse<String>> second = get("/quick", one);
    worked.countDown();
    assertEquals("there", second.get().body());
    assertEquals("there", slow.get().body());
  }

  private CompletableFuture<HttpResponse<String>> get(String path, String token) {
    URI address = URI.create("http://127.0.0.1:" + server.port() + path);
    return browser.sendAsync(
        HttpRequest.newBuilder(address).header("Cookie", Door.COOKIE + "=" + token).build(),
        BodyHandlers.ofString());
  }
}
