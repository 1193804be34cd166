package spindlebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import spindlebook.figures.Figures;

/** A folder with a book, the program that serves it, and a clock that goes on a minute an entry. */
final class Shop implements AutoCloseable {
  final Path folder;
  final List<String> told = new ArrayList<>();
  private App app;
  Browser browser;

  Shop(Path folder) {
    this.folder = folder;
    open();
  }

  void open() {
    app = App.start(folder, 0, new Ticking(), told::add);
    browser = browser == null ? Browser.paired(app, "Sam") : browser.at(app.port());
  }

  /** At a port that was known before. */
  void open(int port) {
    app = App.start(folder, port, new Ticking(), told::add);
    browser = browser.at(app.port());
  }

  /** A browser that is not paired. */
  Browser stranger() {
    return new Browser(app.port(), "Nobody");
  }

  /** A browser that may only look. */
  Browser looker() {
    Page made = browser.post("/devices/new-link", java.util.Map.of("may", "look")).is(200);
    Browser looker = stranger();
    looker.pair(made.linkIn(), "wall screen");
    return looker;
  }

  Browser as(String who) {
    return Browser.paired(app, who);
  }

  App app() {
    return app;
  }

  int port() {
    return app.port();
  }

  void reopen() {
    close();
    open();
  }

  Page get(String path) {
    return browser.get(path);
  }

  Path log() {
    return folder.resolve("book.jsonl");
  }

  List<String> lines() {
    try {
      return Files.readAllLines(log());
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  /** Entries in the book: its lines but the header. */
  int entries() {
    return lines().size() - 1;
  }

  /** One corner's findings to full precision, from the file alone. */
  JsonNode figures(String corner) {
    try {
      JsonNode all = new ObjectMapper().readTree(Figures.of(log(), told::add));
      for (JsonNode car : all.get("cars")) {
        for (JsonNode c : car.get("corners")) {
          if (c.get("corner").asText().equals(corner)) {
            return c;
          }
        }
      }
      throw new AssertionError("no corner " + corner + " in " + all);
    } catch (IOException trouble) {
      throw new UncheckedIOException(trouble);
    }
  }

  @Override
  public void close() {
    app.close();
  }

  /** A minute for each writing of the book, and next to nothing for each look at it. */
  private static final class Ticking extends Clock {
    private static final Instant EIGHT = Instant.parse("2031-05-04T08:00:00Z");
    private Instant now = EIGHT;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public synchronized Instant instant() {
      boolean writes = Thread.currentThread().getName().equals("book-writer");
      Instant told = now;
      now = now.plusMillis(writes ? 60_000 : 50);
      return told;
    }
  }
}
