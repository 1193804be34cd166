package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;

/** Every kind of page of the demo in a real Chromium, opened once and asked all that is asked. */
class PagesBrowserTest {
  private static final List<String> PAGES =
      List.of(
          "/cars",
          "/cars/new",
          "/cars/marmot",
          "/cars/marmot/details",
          "/cars/marmot/settings",
          "/corners/marmot-lf/trial?adjuster=limit-strap&to=18",
          "/cars/marmot/happenings/new",
          "/cars/marmot/tools",
          "/cars/marmot/tools/tape",
          "/cars/marmot/use",
          "/cars/marmot/to-do",
          "/cars/marmot/fasteners",
          "/cars/marmot/re-check",
          "/cars/marmot/drive-check",
          "/cars/marmot/sides",
          "/cars/marmot/sides?axle=rear",
          "/cars/marmot/compare",
          "/cars/marmot/compare?one=100&other=now&corner=left-rear",
          "/cars/marmot/compare?beside=other-side",
          "/cars/marmot/put-back",
          "/cars/marmot/put-back?at=60",
          "/cars/marmot/sign-offs",
          "/cars/marmot/sign-offs/new",
          "/sign-offs/sign-off-1",
          "/sign-offs/sign-off-1?corner=marmot-rr",
          "/sign-offs/sign-off-1/since",
          "/corners/marmot-lf/print",
          "/cars/marmot/book",
          "/corners/marmot-lf",
          "/corners/marmot-rf",
          "/corners/marmot-lf/limits",
          "/corners/marmot-rf/limits",
          "/corners/marmot-rr/limits",
          "/corners/marmot-lf/life",
          "/corners/marmot-rr/life",
          "/corners/marmot-lf/curves",
          "/corners/marmot-lf/curves?of=camber&against=other-side",
          "/corners/marmot-lf/curves?of=p-tie-rod-upper-arm",
          "/corners/marmot-lf/curves?of=p-tie-rod-upper-arm&against=before-lf-strap-1",
          "/corners/marmot-rr/curves?of=camber&against=before-rr-hit",
          "/corners/marmot-lf/curves?of=toe",
          "/corners/marmot-lf/alignment",
          "/corners/marmot-lf/alignment/new?way=gauge",
          "/corners/marmot-lf/alignment/new?way=sweep",
          "/corners/marmot-lf/alignment/new?way=string",
          "/corners/marmot-lf/alignment/new?way=across",
          "/corners/marmot-lf/alignment/targets",
          "/corners/marmot-lr/alignment",
          "/alignments/lf-sweep/correct",
          "/entries/lf-sweep",
          "/corners/marmot-lr",
          "/corners/marmot-rr",
          "/corners/marmot-lf?at=300",
          "/corners/marmot-lf/spring",
          "/corners/marmot-rf/spring",
          "/corners/marmot-lr/spring",
          "/corners/marmot-lf/spring/rate",
          "/corners/marmot-lr/spring/weight",
          "/corners/marmot-lf/spring/stops/hydraulic",
          "/corners/marmot-lf/spring/try?open=28.5&stroke=12",
          "/cars/marmot/parts",
          "/cars/marmot/parts/new",
          "/cars/marmot/parts/part-lf-strap",
          "/corners/marmot-lf/rod-ends",
          "/corners/marmot-lf/rod-ends?thread=5/8-18&apart=300mm&arm=385mm&spread=350mm&camber=-0.5",
          "/corners/marmot-lf/wheel",
          "/corners/marmot-lf/linkage",
          "/corners/marmot-rf/linkage",
          "/corners/marmot-lf/linkage/su",
          "/corners/marmot-lf/linkage/agree",
          "/corners/marmot-lf/linkage/moves",
          "/corners/marmot-lf/linkage/try",
          "/corners/marmot-lf/given",
          "/corners/marmot-lf/watch-points",
          "/corners/marmot-lr/watch-points",
          "/corners/marmot-lr/watch-points/cv-plunge",
          "/corners/marmot-lr/watch-points/copy",
          "/corners/marmot-lf/watch-points/new",
          "/corners/marmot-lf/watch-points/tie-rod-upper-arm",
          "/corners/marmot-lf/adjusters/limit-strap",
          "/corners/marmot-lf/adjustments",
          "/corners/marmot-lf/adjustments/limit-strap",
          "/corners/marmot-lf/telltales",
          "/corners/marmot-lf/photos",
          "/corners/marmot-lf/fasteners",
          "/corners/marmot-lf/fasteners/upper-rod-ends",
          "/corners/marmot-lf/rounds",
          "/corners/marmot-lf/rounds/new",
          "/corners/marmot-lf/rounds/new?again=1",
          "/rounds/lf-3",
          "/rounds/lf-3/guide",
          "/rounds/lf-1/guide?at=on-the-strap-1/full-left/p-tie-rod-upper-arm",
          "/rounds/lf-1/guide?at=on-the-strap-1/straight/q-camber",
          "/rounds/lf-1",
          "/rounds/lf-1/sheet",
          "/rounds/lf-3/heights/new",
          "/heights/lf-3-strap",
          "/heights/lf-3-strap?steering=full-right",
          "/heights/lf-1-mid/correct",
          "/readings/lf-3-tru/correct",
          "/heights/lr-1-strap",
          "/entries/rr-hit",
          "/entries/lf-1-mid",
          "/entries/lf-3-tru",
          "/backups",
          "/devices",
          "/devices/new-link",
          "/pair",
          "/pair/no-such-code",
          "/no-such-page");

  private static final List<String> wide = new ArrayList<>();
  private static final List<String> floating = new ArrayList<>();
  private static final List<String> inaccessible = new ArrayList<>();
  private static final List<String> complaints = new ArrayList<>();
  private static final List<Measured> measured = new ArrayList<>();
  private static Shop shop;
  private static Screen screen;

  @BeforeAll
  static void open_every_page(@TempDir Path folder) {
    DemoBook.copyTo(folder);
    shop = new Shop(folder);
    screen = new Screen(shop, 390, 844);
    Accessibility.into(screen.screen);
    for (String page : PAGES) {
      screen.go(page);
      for (String scheme : List.of("light", "dark", "print")) {
        screen.media(
            scheme.equals("print") ? "print" : "",
            "prefers-color-scheme",
            scheme.equals("dark") ? "dark" : "light");
        boolean asLight = scheme.equals("light");
        for (String broken :
            asLight
                ? Accessibility.broken(screen.screen)
                : Accessibility.brokenByColour(screen.screen)) {
          inaccessible.add(page + " " + scheme + " " + broken);
        }
      }
      screen.media("", "prefers-color-scheme", "light");
      for (int width : new int[] {320, 1280, 390}) {
        screen.size(width, 844);
        long scroll = (Long) screen.ask("return document.documentElement.scrollWidth");
        if (scroll > width) {
          wide.add(page + " at " + width + ": " + scroll);
        }
      }
      long foot =
          (Long)
              screen.ask(
                  "const bar = document.querySelector('.bar');"
                      + "return Math.round(bar?.getBoundingClientRect().bottom ?? innerHeight)");
      if (foot != 844) {
        floating.add(page + " at " + foot);
      }
      measured.add(Measured.of(screen, page));
    }
    complaints.addAll(complaints());
    measured.forEach(System.out::println);
  }

  @AfterAll
  static void close() {
    if (screen != null) {
      screen.close();
    }
    if (shop != null) {
      shop.close();
    }
  }

  private static List<String> complaints() {
    return screen.screen.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::getMessage)
        .filter(m -> m.contains("Content Security Policy"))
        .toList();
  }

  @Test
  void no_page_scrolls_sideways_at_320_390_or_on_a_desktop() {
    assertEquals(List.of(), wide);
  }

  @Test
  void the_bar_of_places_stands_at_the_foot_of_a_phone_on_a_short_page_too() {
    assertEquals(List.of(), floating);
  }

  @Test
  void an_accessibility_checker_finds_nothing_on_any_page_in_light_dark_or_print() {
    assertEquals(List.of(), inaccessible);
    screen.go("/cars");
    screen.ask("document.querySelector('h1').style.color = 'rgb(240, 240, 240)'");
    assertEquals(1, Accessibility.broken(screen.screen).size(), "a fault would have been found");
  }

  @Test
  void text_has_one_of_five_sizes_on_every_page() {
    assertEquals(
        List.of("14px", "17px", "20px", "28px", "48px"),
        measured.stream().flatMap(m -> m.sizes().stream()).distinct().sorted().toList());
  }

  @Test
  void what_stands_above_below_and_within_is_apart_by_one_of_five_steps() {
    Set<String> scale = Set.of("4px", "8px", "16px", "24px", "40px");
    assertEquals(
        List.of(),
        measured.stream()
            .filter(m -> !scale.containsAll(m.spaces()))
            .map(Measured::toString)
            .toList());
  }

  @Test
  void a_page_is_three_screens_of_a_phone_at_most_with_its_folds_closed_and_the_book_eight() {
    assertEquals(
        List.of(),
        measured.stream()
            .filter(m -> m.screens() > (m.page().endsWith("/book") ? 8 : 3))
            .map(Measured::toString)
            .toList());
  }

  @Test
  void the_pages_one_looks_at_beside_the_car_say_it_in_few_words() {
    Map<String, Integer> most =
        Map.of(
            "/cars/marmot", 120,
            "/corners/marmot-lf", 150,
            "/corners/marmot-lf/limits", 120,
            "/cars/marmot/drive-check", 200);
    assertEquals(
        List.of(),
        measured.stream()
            .filter(m -> m.words() > most.getOrDefault(m.page(), Integer.MAX_VALUE))
            .map(Measured::toString)
            .toList());
    assertEquals(4, measured.stream().filter(m -> most.containsKey(m.page())).count());
  }

  @Test
  void no_page_wants_what_the_content_policy_forbids() {
    assertEquals(List.of(), complaints);
    screen.ask("document.body.setAttribute('style', 'color: red')");
    assertTrue(!complaints().isEmpty(), "a complaint would have been heard");
  }
}
