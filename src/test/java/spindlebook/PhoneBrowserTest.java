package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.logging.Level;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;
import org.openqa.selenium.support.ui.ExpectedConditions;
import org.openqa.selenium.support.ui.WebDriverWait;

/** The real pages in a real Chromium, at phone size. */
class PhoneBrowserTest {
  @TempDir Path folder;
  private App app;
  private ChromeDriver phone;
  private int taps;
  private int typedFields;

  @BeforeEach
  void open() {
    boolean required = "required".equals(System.getProperty("browser"));
    assumeTrue(required || Files.exists(Path.of("/usr/bin/chromium")), "no Chromium here");
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--user-data-dir=" + folder.resolve("browser"));
    LoggingPreferences heard = new LoggingPreferences();
    heard.enable(LogType.BROWSER, Level.ALL);
    options.setCapability("goog:loggingPrefs", heard);
    Path driver = Path.of("/usr/bin/chromedriver");
    if (Files.exists(driver)) {
      System.setProperty("webdriver.chrome.driver", driver.toString());
    }
    phone = new ChromeDriver(options);
    width(390);
  }

  @AfterEach
  void close() {
    if (phone != null) {
      phone.quit();
    }
    if (app != null) {
      app.close();
    }
  }

  private void serve() {
    app = App.start(folder.resolve("data"), 0, Clock.systemUTC(), line -> {});
    go(app.code().path());
    press(find(button("Pair this device")));
    new WebDriverWait(phone, Duration.ofSeconds(10))
        .until(d -> !d.getCurrentUrl().contains("/pair/"));
  }

  private void serveDemo() {
    DemoCar.play(folder.resolve("data"), Clock.systemUTC(), line -> {});
    serve();
  }

  private void width(int cssPx) {
    phone.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", cssPx, "height", 844, "deviceScaleFactor", 1, "mobile", cssPx < 800));
  }

  private void scheme(String scheme) {
    phone.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            "",
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  /** As it would be printed. */
  private void paper() {
    phone.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
  }

  private void go(String path) {
    phone.get("http://127.0.0.1:" + app.port() + path);
  }

  private void tap(By what) {
    taps++;
    press(find(what));
  }

  /** On the page that is there or just coming. */
  private WebElement find(By what) {
    return new WebDriverWait(phone, Duration.ofSeconds(10))
        .until(ExpectedConditions.presenceOfElementLocated(what));
  }

  /** As a thumb does: to the middle of the screen first, clear of the bars. */
  private void press(WebElement what) {
    phone.executeScript(
        "arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", what);
    what.click();
  }

  /** A tap into the box, then the text. */
  private void type(By box, String text) {
    typedFields++;
    tap(box);
    find(box).sendKeys(text);
  }

  private static By button(String word) {
    return By.xpath("//*[self::button or self::a][normalize-space()='" + word + "']");
  }

  @Test
  void a_first_height_is_in_the_book_after_eight_taps_and_three_typed_fields_at_most() {
    serve();
    go("/");
    type(By.name("name"), "Marmot");
    tap(button("Put it in the book"));
    tap(button("Measure left front"));
    tap(button("Start"));
    type(By.id("g-box"), "14 3/8" + Keys.ENTER);
    type(By.id("g-box"), "30 1/4" + Keys.ENTER);

    String inTheBook = "On the strap (full droop), spindle 14 3/8 · in the book";
    new WebDriverWait(phone, Duration.ofSeconds(10))
        .until(d -> find(By.cssSelector(".g-said")).getText().contains(inTheBook));
    find(By.linkText("the round")).click();
    String said = find(By.cssSelector(".heights tbody")).getText();
    assertTrue(said.contains("−15 7/8 in"), said);
    System.out.println("first saved height: " + taps + " taps, " + typedFields + " typed fields");
    assertTrue(taps <= 8, taps + " taps");
    assertTrue(typedFields <= 3, typedFields + " typed fields");
  }

  @Test
  void a_reading_is_kept_as_it_is_typed_without_leaving_the_page() {
    serveDemo();
    go("/heights/lf-3-strap?steering=full-left");
    WebElement box = phone.findElement(By.name("v-p-tie-rod-upper-arm"));
    box.sendKeys("5/8");
    // Going on to the next box is all it takes.
    press(phone.findElement(By.name("v-p-tie-rod-end")));
    wait(".saved");
    String said = find(By.cssSelector(".saved")).getText();
    assertTrue(said.contains("full left · tie rod to upper arm · 5/8 in · 15.9 mm"), said);
    assertTrue(said.contains("against last time"), said);
  }

  @Test
  void a_word_is_one_tap_and_can_be_taken_back_with_one() {
    serveDemo();
    go("/heights/lf-3-strap?steering=full-left");
    WebElement row = phone.findElement(By.id("p-hose-slack"));
    press(row.findElement(By.xpath(".//button[normalize-space()='well clear']")));
    wait(".saved");
    assertTrue(phone.findElement(By.id("p-hose-slack")).getText().contains("well clear"));
    press(phone.findElement(button("Take it back")));
    new WebDriverWait(phone, Duration.ofSeconds(10))
        .until(d -> d.findElements(By.cssSelector(".saved")).isEmpty());
    assertTrue(find(By.id("p-hose-slack")).getText().contains("Slack"));
    assertEquals(List.of(), phone.findElements(By.cssSelector("#p-hose-slack .said-here")));
  }

  @Test
  void without_a_script_the_same_forms_do_the_same() {
    serveDemo();
    phone.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
    go("/heights/lf-3-strap?steering=full-left");
    phone.findElement(By.name("v-p-tie-rod-upper-arm")).sendKeys("81/4");
    press(
        phone
            .findElement(By.id("p-tie-rod-upper-arm"))
            .findElement(By.cssSelector(".reading-save")));
    String asked = find(By.cssSelector("#p-tie-rod-upper-arm .problem")).getText();
    assertTrue(asked.contains("more than one way"), asked);
    assertEquals(
        "81/4", phone.findElement(By.name("v-p-tie-rod-upper-arm")).getDomAttribute("value"));
  }

  @Test
  void a_reading_typed_while_the_program_is_gone_reaches_the_book_when_it_is_back() {
    serveDemo();
    go("/heights/lf-3-strap?steering=full-left");
    int port = app.port();
    app.close();
    app = null;
    WebElement box = phone.findElement(By.name("v-p-tie-rod-upper-arm"));
    box.sendKeys("5/8");
    press(phone.findElement(By.name("v-p-tie-rod-end")));
    wait(".sending");
    new WebDriverWait(phone, Duration.ofSeconds(10))
        .until(d -> d.findElement(By.cssSelector(".sending")).getText().contains("on this phone"));
    assertEquals("5/8", box.getDomProperty("value"));

    app = App.start(folder.resolve("data"), port, Clock.systemUTC(), line -> {});
    new WebDriverWait(phone, Duration.ofSeconds(20))
        .until(d -> !d.findElement(By.cssSelector(".outbox")).isDisplayed());
    go("/heights/lf-3-strap?steering=full-left");
    String said = find(By.id("p-tie-rod-upper-arm")).getText();
    assertTrue(said.contains("5/8 in"), said);
  }

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
          "/corners/marmot-lf/curves",
          "/corners/marmot-lf/curves?of=camber&against=other-side",
          "/corners/marmot-lf/curves?of=p-tie-rod-upper-arm",
          "/corners/marmot-lf/curves?of=p-tie-rod-upper-arm&against=before-lf-strap-1",
          "/corners/marmot-rr/curves?of=camber&against=before-rr-hit",
          "/corners/marmot-lf/bump-steer",
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
          "/corners/marmot-lf/rod-ends",
          "/corners/marmot-lf/rod-ends?thread=5/8-18&apart=300mm&arm=385mm&spread=350mm&camber=-0.5",
          "/corners/marmot-lf/wheel",
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
          "/devices",
          "/devices/new-link",
          "/pair",
          "/pair/no-such-code",
          "/no-such-page");

  @Test
  void no_page_scrolls_sideways_at_320_390_or_on_a_desktop() {
    serveDemo();
    List<String> wide = new ArrayList<>();
    for (String page : PAGES) {
      go(page);
      for (int width : new int[] {320, 390, 1280}) {
        width(width);
        long scroll = (Long) phone.executeScript("return document.documentElement.scrollWidth");
        if (scroll > width) {
          wide.add(page + " at " + width + ": " + scroll);
        }
      }
    }
    assertEquals(List.of(), wide);
  }

  @Test
  void an_accessibility_checker_finds_nothing_on_any_page_in_light_dark_or_print() {
    serveDemo();
    List<String> found = new ArrayList<>();
    for (String page : PAGES) {
      go(page);
      for (String scheme : List.of("light", "dark", "print")) {
        if (scheme.equals("print")) {
          paper();
        } else {
          scheme(scheme);
        }
        for (Rule rule : new AxeBuilder().analyze(phone).getViolations()) {
          found.add(
              page + " " + scheme + " " + rule.getId() + ": " + rule.getNodes().get(0).getHtml());
        }
      }
    }
    assertEquals(List.of(), found);
  }

  @Test
  void no_page_wants_what_the_content_policy_forbids() {
    serveDemo();
    for (String page : PAGES) {
      go(page);
    }
    List<String> complaints =
        phone.manage().logs().get(LogType.BROWSER).getAll().stream()
            .map(LogEntry::getMessage)
            .filter(m -> m.contains("Content Security Policy"))
            .toList();
    assertEquals(List.of(), complaints);
    phone.executeScript("document.body.setAttribute('style', 'color: red')");
    assertTrue(
        phone.manage().logs().get(LogType.BROWSER).getAll().stream()
            .anyMatch(e -> e.getMessage().contains("Content Security Policy")),
        "a complaint would have been heard");
  }

  @Test
  void a_page_prints_without_its_keys() {
    serveDemo();
    go("/corners/marmot-lf");
    phone.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
    assertFalse(phone.findElement(By.cssSelector(".actions")).isDisplayed());
    assertTrue(phone.findElement(By.cssSelector(".blade")).isDisplayed());
    assertEquals(
        "rgb(255, 255, 255)",
        phone.executeScript("return getComputedStyle(document.body).backgroundColor"));
  }

  @Test
  void a_corner_and_the_drive_check_print_on_one_sheet_each() {
    serveDemo();
    List<String> sheets = new ArrayList<>();
    for (String page :
        List.of(
            "/cars/marmot/drive-check",
            "/corners/marmot-lf/print",
            "/corners/marmot-rf/print",
            "/corners/marmot-lr/print",
            "/corners/marmot-rr/print",
            "/corners/marmot-lf/alignment",
            "/corners/marmot-rf/alignment",
            "/corners/marmot-rr/alignment")) {
      go(page);
      // A4 and Letter, in inches.
      for (double[] paper : new double[][] {{8.27, 11.69}, {8.5, 11}}) {
        sheets.add(page + " " + paper[1] + ": " + sheets(paper));
      }
    }
    assertEquals(
        List.of(), sheets.stream().filter(s -> !s.endsWith(": 1")).toList(), sheets.toString());
    go("/cars/marmot/book");
    assertTrue(sheets(new double[] {8.27, 11.69}) > 1, "more than one would have been counted");
  }

  private int sheets(double[] paperInches) {
    Map<String, Object> answer =
        phone.executeCdpCommand(
            "Page.printToPDF", Map.of("paperWidth", paperInches[0], "paperHeight", paperInches[1]));
    byte[] pdf = Base64.getDecoder().decode((String) answer.get("data"));
    return (int)
        Pattern.compile("/Type\\s*/Page[^s]")
            .matcher(new String(pdf, StandardCharsets.ISO_8859_1))
            .results()
            .count();
  }

  private void wait(String css) {
    new WebDriverWait(phone, Duration.ofSeconds(10))
        .until(d -> !d.findElements(By.cssSelector(css)).isEmpty());
  }
}
