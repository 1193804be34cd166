package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.backup.Commands;
import spindlebook.web.Listening;

/** A whole evening on an empty book, tapped on a phone: nothing waits on it at the end. */
class EveningBrowserTest {
  private static final long SEED = 20310504;
  private static final Duration PATIENCE = Duration.ofSeconds(300);
  private static final Pattern OFFERED =
      Pattern.compile("href=\"(/corners/[^\"]*/rounds/new\\?[^\"]*)\"");

  private static final Pattern TYPED =
      Pattern.compile("\"key\":\"([^\"]+)\",\"kind\":\"(?:height|reading)\"");

  @TempDir Path folder;

  private Path log() {
    return folder.resolve("data").resolve("book.jsonl");
  }

  private Path data() {
    return folder.resolve("data");
  }

  private App serve() {
    return App.start(data(), Listening.here(0), Clock.systemUTC(), line -> {});
  }

  /** Keys of what a phone typed, in the book's order. */
  private List<String> typed() throws IOException {
    return Files.readAllLines(log()).stream()
        .map(TYPED::matcher)
        .filter(Matcher::find)
        .map(found -> found.group(1))
        .toList();
  }

  @Test
  void two_corners_every_offered_list_bad_wifi_and_a_restore_leave_nothing_waiting()
      throws Exception {
    App app = serve();
    try (BadLink link = new BadLink(SEED, app.port());
        Phone phone = new Phone(link.port(), SEED)) {
      Browser sam = Browser.paired(app, "Sam");
      phone.pair(app.code().path(), "phone one");
      String car = sam.get("/").form("/cars").with("name", "Marmot").keep().location().substring(6);
      link.bad(true);
      Path stick = folder.resolve("stick");
      List<String> before = List.of();
      for (String corner : List.of(car + "-lf", car + "-rf")) {
        walk(sam, phone, corner, "/corners/" + corner + "/rounds/new", 30);
        if (!Files.exists(stick)) {
          phone.untilAllSent(PATIENCE);
          assertEquals(0, Commands.backup(data(), stick, Clock.systemUTC(), line -> {}));
        }
        Set<String> lists = new LinkedHashSet<>();
        for (String page : List.of("", "/limits", "/curves")) {
          String html = sam.get("/corners/" + corner + page).html();
          OFFERED.matcher(html).results().forEach(m -> lists.add(Page.decoded(m.group(1))));
        }
        assertTrue(lists.size() > 1, "offered: " + lists);
        for (String list : lists) {
          walk(sam, phone, corner, list, 3);
        }
        if (corner.endsWith("-lf")) {
          app.close();
          before = typed();
          Commands.restore(data(), stick, false, Clock.systemUTC(), line -> {});
          assertTrue(typed().size() < before.size());
          app = serve();
          link.leadsTo(app.port());
          sam = sam.at(app.port());
          // Nothing waits yet where the phone has not heard of it.
          Instant latest = Instant.now().plus(PATIENCE);
          while (!typed().containsAll(before)) {
            assertTrue(Instant.now().isBefore(latest), "offered again");
            LockSupport.parkNanos(Duration.ofMillis(200).toNanos());
          }
          phone.untilAllSent(PATIENCE);
        }
      }
      phone.untilAllSent(PATIENCE);
      List<String> all = typed();
      assertEquals(Set.copyOf(all).size(), all.size(), "once each");
      link.releaseAll();
      assertEquals(0, phone.waiting("sb:o:") + phone.waiting("sb:x:"));
      assertEquals(List.of(), phone.pressed.stream().filter(p -> p.startsWith("!")).toList());
    } finally {
      app.close();
    }
  }

  /** A round of what is asked for, and so many entries of it. */
  private static void walk(Browser sam, Phone phone, String corner, String list, int entries) {
    Form start = sam.get(list).is(200).form("/corners/" + corner + "/rounds");
    start.keep();
    phone.guide(start.key());
    phone.type(entries);
  }
}
