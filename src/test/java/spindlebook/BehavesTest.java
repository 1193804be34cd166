package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.read.ListAppender;
import java.io.OutputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.slf4j.LoggerFactory;
import spindlebook.log.Book;

/** How the program bears itself on the machine it runs on. */
class BehavesTest {
  @TempDir Path folder;

  private Path data() {
    return folder.resolve("data");
  }

  /** Every name below the folder of the book that others than its owner may do something with. */
  private Map<String, String> openToOthers() throws Exception {
    Map<String, String> open = new TreeMap<>();
    try (Stream<Path> all = Files.walk(data())) {
      for (Path path : all.toList()) {
        Set<PosixFilePermission> may = Files.getPosixFilePermissions(path);
        boolean owners =
            Files.isDirectory(path)
                ? may.equals(PosixFilePermissions.fromString("rwx------"))
                : may.equals(PosixFilePermissions.fromString("rw-------"));
        if (!owners) {
          open.put(data().relativize(path).toString(), PosixFilePermissions.toString(may));
        }
      }
    }
    return open;
  }

  @Test
  void all_that_is_made_is_for_its_owners_eyes_only() throws Exception {
    try (Shop shop = new Shop(data())) {
      Marmot marmot = new Marmot(shop);
      String photos = "/corners/" + marmot.left + "/photos";
      Form form = shop.get(photos).is(200).form(photos);
      PhotosTest.send(shop.browser, photos, form, PowerCutTest.jpeg(java.awt.Color.RED)).is(303);
      assertEquals(0, Main.run("backup", "--data", data().toString()));
      assertEquals(Map.of(), openToOthers());
    }
    assertEquals(Map.of(), openToOthers());
  }

  @Test
  void files_of_an_earlier_release_are_shut_at_the_next_start_and_nobody_elses() throws Exception {
    try (Shop shop = new Shop(data())) {
      new Marmot(shop);
    }
    Files.createDirectory(data().resolve("photos"));
    Path others = Files.createDirectory(data().resolve("others"));
    Files.writeString(data().resolve("notes.txt"), "mine");
    try (Stream<Path> all = Files.walk(data())) {
      for (Path path : all.toList()) {
        String may = Files.isDirectory(path) ? "rwxr-xr-x" : "rw-r--r--";
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString(may));
      }
    }
    try (Shop shop = new Shop(data())) {
      shop.get("/cars").is(200);
    }
    // The folder was there, and may hold other things: whoever made it says who may look into it.
    assertEquals(Set.of("", "notes.txt", "others"), openToOthers().keySet());
    assertEquals("rwxr-xr-x", PosixFilePermissions.toString(Files.getPosixFilePermissions(others)));
  }

  @Test
  void a_watchdog_on_this_machine_needs_no_pairing_and_learns_nothing_of_the_book()
      throws Exception {
    try (Shop shop = new Shop(data())) {
      new Marmot(shop);
      int entries = shop.entries();
      Page answer = shop.stranger().get("/healthz").is(200);
      assertEquals("ok\n", answer.html());
      assertEquals(entries, shop.entries());
      try (Stream<Path> files = Files.list(data())) {
        assertFalse(files.anyMatch(f -> f.getFileName().toString().startsWith("check")));
      }
      // What cannot be written: a folder is in the way of the file that is forced.
      Path inTheWay = Files.createDirectory(data().resolve("check.new"));
      assertEquals("not ok\n", shop.stranger().get("/healthz").is(503).html());
      Files.delete(inTheWay);
      assertEquals("ok\n", shop.stranger().get("/healthz").is(200).html());
      // What would be refused: the book's own file is another.
      Path book = data().resolve("book.jsonl");
      Files.writeString(book, Files.readString(book).replace("Marmot", "Mormot"));
      assertEquals("not ok\n", shop.stranger().get("/healthz").is(503).html());
      Files.writeString(book, Files.readString(book).replace("Mormot", "Marmot"));
      assertEquals("ok\n", shop.stranger().get("/healthz").is(200).html());
      // What cannot be found: the index does not answer.
      shop.app().bookFile.read(handle -> handle.execute("alter table meta rename to away"));
      assertEquals("not ok\n", shop.stranger().get("/healthz").is(503).html());
    }
  }

  @Test
  void told_to_end_it_answers_who_is_at_work_and_keeps_what_they_send() throws Exception {
    Path terminal = folder.resolve("terminal");
    try (ServedBook served = new ServedBook(data(), terminal)) {
      Browser browser = new Browser(served.port(), "Sam");
      browser.pair(served.pairing(), "Sam's phone");
      Form form = browser.get("/").is(200).form("/cars").with("name", "Marmot");
      String body = Browser.encoded(form.values());
      String head =
          String.join(
              Raw.NL,
              "POST /cars HTTP/1.1",
              "Host: 127.0.0.1:" + served.port(),
              "Origin: http://127.0.0.1:" + served.port(),
              "Cookie: " + browser.cookie(),
              "Content-Type: " + Browser.FORM,
              "Content-Length: " + body.length(),
              "",
              "");
      try (Socket phone = new Socket("127.0.0.1", served.port())) {
        phone.setSoTimeout(20_000);
        OutputStream out = phone.getOutputStream();
        out.write((head + body.substring(0, 5)).getBytes(StandardCharsets.ISO_8859_1));
        out.flush();
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(500));
        Process program = served.tellToEnd();
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(700));
        assertTrue(program.isAlive(), "it did not wait");
        out.write(body.substring(5).getBytes(StandardCharsets.ISO_8859_1));
        out.flush();
        String answer = new String(phone.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertTrue(answer.startsWith("HTTP/1.1 303"), answer);
        assertTrue(program.waitFor(20, TimeUnit.SECONDS));
      }
      assertTrue(Files.readString(data().resolve("book.jsonl")).contains("Marmot"));
      assertTrue(Files.exists(data().resolve("index.clean")), "closed in order");
      // Nor does its log know who was there, what was typed, or under which code.
      String log = Files.readString(terminal);
      String after = log.substring(log.indexOf("It pairs one device."));
      for (String personal : new String[] {"Sam", "Marmot", "127.0.0.1", "/pair/"}) {
        assertFalse(after.contains(personal), after);
      }
    }
  }

  @Test
  void what_fails_is_logged_without_a_word_that_anybody_typed() throws Exception {
    ListAppender<ILoggingEvent> logged = new ListAppender<>();
    Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    logged.start();
    root.addAppender(logged);
    try (Shop shop = new Shop(data())) {
      Marmot marmot = new Marmot(shop);
      Book book = shop.app().bookFile;
      book.read(handle -> handle.execute("alter table entry rename to away"));
      book.append(PowerCutTest.note("Hedgehog"));
      shop.get("/cars/" + marmot.car).is(500);
      StringBuilder all = new StringBuilder(String.join("\n", shop.told));
      for (ILoggingEvent event : logged.list) {
        all.append(event.getFormattedMessage());
        if (event.getThrowableProxy() != null) {
          all.append(ThrowableProxyUtil.asString(event.getThrowableProxy()));
        }
      }
      String log = all.toString();
      assertTrue(log.contains("GET /cars/{car} failed"), log);
      assertTrue(log.contains("the index could not follow"), log);
      for (String personal : new String[] {"Sam", "Hedgehog", "Marmot", marmot.car}) {
        assertFalse(log.contains(personal), personal + " in " + log);
      }
    } finally {
      root.detachAppender(logged);
    }
  }
}
