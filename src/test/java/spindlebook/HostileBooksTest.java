package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.figures.Figures;
import spindlebook.log.Book;
import spindlebook.log.BookRefused;
import spindlebook.log.Draft;

/**
 * Books written by hand to break it: {@code figures} tells their figures or says in one sentence
 * why not, and every page of theirs answers, without a stack. {@code -Dbooks=1000} for the long
 * run; docs/benchmarks.md has its figures.
 */
class HostileBooksTest {
  private static final int BOOKS = Integer.getInteger("books", 20);
  private static final long SEED = Long.getLong("seed", 1);

  /** So many stand in one log as its cars, and are served together. */
  private static final int TOGETHER = 25;

  private static final List<String> OF_CAR =
      List.of(
          "",
          "/drive-check",
          "/book",
          "/settings",
          "/tools",
          "/to-do",
          "/use",
          "/fasteners",
          "/re-check",
          "/sides",
          "/compare?beside=other-side",
          "/compare?one=9",
          "/put-back?at=9",
          "/sign-offs",
          "/sign-offs/new",
          "/details");
  private static final List<String> OF_CORNER =
      List.of(
          "",
          "/limits",
          "/curves",
          "/curves?of=toe",
          "/rod-ends",
          "/alignment",
          "/wheel",
          "/given",
          "/watch-points",
          "/adjustments",
          "/adjustments/limit-strap",
          "/trial",
          "/rounds",
          "/rounds/new",
          "/paper",
          "/print",
          "/telltales",
          "/photos",
          "/fasteners");

  @Test
  void figures_are_told_or_refused_in_one_sentence(@TempDir Path folder) throws Exception {
    Map<String, String> wrong = new LinkedHashMap<>();
    int told = 0;
    for (long seed = SEED; seed < SEED + 2L * BOOKS; seed++) {
      String lines = new HostileBook(seed, seed % 3 > 0).lines();
      Path file = Files.writeString(folder.resolve("hostile.jsonl"), lines);
      try {
        Figures.of(file, t -> {});
        told++;
      } catch (BookRefused refused) {
        if (refused.getMessage().lines().count() != 1) {
          wrong.put(refused.getMessage(), "book " + seed);
        }
      } catch (RuntimeException | StackOverflowError broken) {
        wrong.putIfAbsent(where(broken), "book " + seed);
      }
    }
    assertEquals(Map.of(), wrong);
    assertTrue(told > BOOKS / 2, "told of " + told);
  }

  private static String where(Throwable broken) {
    StackTraceElement[] at = broken.getStackTrace();
    String top = at.length == 0 ? "" : at[0] + " < " + at[Math.min(1, at.length - 1)];
    return broken + " at " + top;
  }

  @Test
  void every_page_of_theirs_answers(@TempDir Path folder) throws Exception {
    List<String> wrong = new ArrayList<>();
    int pages = 0;
    try (Stacks stacks = new Stacks()) {
      for (long seed = SEED; seed < SEED + BOOKS; seed += TOGETHER) {
        Path here = Files.createDirectory(folder.resolve("books-" + seed));
        List<HostileBook> books = new ArrayList<>();
        for (long s = seed; s < Math.min(seed + TOGETHER, SEED + BOOKS); s++) {
          books.add(new HostileBook(s, s % 4 > 0));
        }
        write(here, books);
        try (Shop shop = new Shop(here)) {
          for (HostileBook book : books) {
            for (String page : pages(book)) {
              Page answer = shop.get(page);
              pages++;
              if (answer.status() >= 500 || answer.html().contains("\tat ")) {
                wrong.add(answer.status() + " " + page);
              }
            }
          }
          for (String page : List.of("/", "/cars", "/devices")) {
            assertTrue(shop.get(page).status() < 500, page);
          }
        }
      }
      assertEquals(List.of(), stacks.seen(), wrong::toString);
    }
    assertEquals(List.of(), wrong);
    assertTrue(pages > 40 * BOOKS, "pages: " + pages);
  }

  private static void write(Path folder, List<HostileBook> books) {
    try (Book log = Book.open(folder, Clock.systemUTC(), t -> {})) {
      for (HostileBook book : books) {
        List<Draft> drafts = new ArrayList<>();
        for (ObjectNode e : book.entries) {
          String kind = e.get("kind").asText();
          drafts.add(
              new Draft(
                  e.get("key").asText(), kind, 1, log.lastN(), "Sam", null, null, e.get("body")));
        }
        log.append(drafts);
      }
    }
  }

  /** The car's, its corners' and some of its entries' own. */
  private static List<String> pages(HostileBook book) {
    List<String> pages = new ArrayList<>();
    OF_CAR.forEach(p -> pages.add("/cars/" + book.key("car") + p));
    for (String corner : List.of("lf", "rf")) {
      OF_CORNER.forEach(p -> pages.add("/corners/" + book.key(corner) + p));
    }
    int i = 0;
    for (ObjectNode e : book.entries) {
      String key = e.get("key").asText();
      if (i++ % 9 == 0) {
        pages.add("/entries/" + key);
      }
      if (i % 12 == 0) {
        pages.addAll(
            List.of(
                "/rounds/" + key,
                "/rounds/" + key + "/guide",
                "/rounds/" + key + "/sheet",
                "/heights/" + key,
                "/heights/" + key + "/correct",
                "/readings/" + key + "/correct",
                "/alignments/" + key + "/correct"));
      }
    }
    return pages;
  }
}
