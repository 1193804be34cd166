package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
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
    phone = Chromium.open();
    phone.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", 390, "height", 844, "deviceScaleFactor", 1, "mobile", true));
  }

  @AfterEach
  void close() {
    if (phone != null) {
      Chromium.giveBack(phone);
    }
    if (app != null) {
      app.close();
    }
  }

  private void serve() {
    app = App.start(folder.resolve("data"), 0, Clock.systemUTC(), line -> {});
    go(app.code().path());
    press(find(button("Pair this device")));
    soon().until(d -> !d.getCurrentUrl().contains("/pair/"));
  }

  private void serveDemo() {
    DemoBook.copyTo(folder.resolve("data"));
    serve();
  }

  private WebDriverWait soon() {
    return Chromium.patience(phone, Duration.ofSeconds(10));
  }

  private void go(String path) {
    phone.get("http://127.0.0.1:" + app.port() + path);
  }

  private void tap(By what) {
    taps++;
    // A page that is still being drawn may take what was found away again.
    soon()
        .until(
            d -> {
              press(d.findElement(what));
              return true;
            });
  }

  /** On the page that is there or just coming. */
  private WebElement find(By what) {
    return soon().until(ExpectedConditions.presenceOfElementLocated(what));
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
    tap(button("Save"));
    tap(button("Measure left front"));
    tap(button("Start"));
    // Strap and bump stop are off now.
    tap(button("Done"));
    tap(By.cssSelector("[data-key=Type]"));
    type(By.id("g-box"), "14 3/8" + Keys.ENTER);
    type(By.id("g-box"), "30 1/4" + Keys.ENTER);

    String inTheBook = "spindle 14 3/8 · in the book";
    soon().until(d -> find(By.cssSelector(".g-said")).getText().contains(inTheBook));
    find(By.cssSelector("[data-key=More]")).click();
    find(By.linkText("The round")).click();
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
    soon().until(d -> d.findElements(By.cssSelector(".saved")).isEmpty());
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
    soon()
        .until(d -> d.findElement(By.cssSelector(".sending")).getText().contains("on this phone"));
    assertEquals("5/8", box.getDomProperty("value"));

    app = App.start(folder.resolve("data"), port, Clock.systemUTC(), line -> {});
    // A phone asks again after 16 s at the latest, and gives a lost try 8.
    Chromium.patience(phone, Duration.ofSeconds(60))
        .withMessage(() -> find(By.cssSelector(".outbox")).getText() + kept())
        .until(d -> !d.findElement(By.cssSelector(".outbox")).isDisplayed());
    go("/heights/lf-3-strap?steering=full-left");
    String said = find(By.id("p-tie-rod-upper-arm")).getText();
    assertTrue(said.contains("5/8 in"), said);
  }

  /** What waits on the phone, and which tab sends it. */
  private Object kept() {
    return phone.executeScript("return JSON.stringify(localStorage)");
  }

  @Test
  void a_page_prints_without_its_keys() {
    serveDemo();
    go("/corners/marmot-lf");
    phone.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
    assertFalse(phone.findElement(By.cssSelector(".bar")).isDisplayed());
    assertTrue(phone.findElement(By.cssSelector(".sheet-drawing")).isDisplayed());
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
            "/cars/marmot",
            "/cars/marmot/drive-check",
            "/corners/marmot-lf",
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

  @Test
  void a_blank_round_prints_on_two_sheets_whatever_carries_the_wheel() {
    serveDemo();
    List<String> papers = new ArrayList<>();
    for (String corner : List.of("lf", "rf", "lr", "rr")) {
      papers.add("/corners/marmot-" + corner + "/paper");
    }
    for (String[] ends :
        new String[][] {
          {"steered-double-a-arm", "unsteered-double-a-arm"},
          {"trailing-arm", "solid-axle-end"}
        }) {
      go("/cars/new");
      find(By.name("name")).sendKeys(ends[0]);
      press(find(By.cssSelector("[name=front][value=" + ends[0] + "]")));
      press(find(By.cssSelector("[name=rear][value=" + ends[1] + "]")));
      press(find(button("Save")));
      String car = soon().until(d -> carOf(d.getCurrentUrl()));
      papers.add("/corners/" + car + "-lf/paper");
      papers.add("/corners/" + car + "-lr/paper");
    }
    List<String> sheets = new ArrayList<>();
    for (String page : papers) {
      go(page);
      assertEquals(1, phone.findElements(By.cssSelector(".blank-scroll")).size(), page);
      for (double[] paper : new double[][] {{8.27, 11.69}, {8.5, 11}}) {
        sheets.add(page + " " + paper[1] + ": " + sheets(paper));
      }
    }
    System.out.println(sheets);
    assertEquals(List.of(), sheets.stream().filter(s -> !s.matches(".*: [12]")).toList());
    // Hatching as an image made it 12 MB, seconds of a phone's work and of its printer's.
    int bytes = pdf(new double[] {8.27, 11.69}).length;
    assertTrue(bytes < 500_000, bytes + " bytes");
    // A pen needs room: at least 7 mm of 96 px an inch.
    phone.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("media", "print"));
    Number lowest =
        (Number)
            phone.executeScript(
                "return Math.min(...[...document.querySelectorAll('.blank tbody"
                    + " tr:not(.blank-group)')].map(r => r.getBoundingClientRect().height))");
    assertTrue(lowest.doubleValue() / 96 * 25.4 >= 7, lowest + " px");
    assertEquals(
        true,
        phone.executeScript(
            "return document.querySelector('.blank-zero li').getBoundingClientRect().height > 0"),
        "what is zeroed");
    phone.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", 703, "height", 844, "deviceScaleFactor", 1, "mobile", true));
    assertEquals(
        List.of(),
        phone.executeScript(
            "return [...document.querySelectorAll('.blank thead th')].filter(h => {"
                + "h.style.overflowWrap = 'normal'; return h.scrollWidth > h.clientWidth;})"
                + ".map(h => h.innerText)"),
        "no word is broken");
  }

  /** Null before the page of a new car. */
  private static String carOf(String url) {
    String name = url.substring(url.lastIndexOf('/') + 1);
    return url.contains("/cars/") && !name.equals("new") ? name : null;
  }

  private byte[] pdf(double[] paperInches) {
    Map<String, Object> answer =
        phone.executeCdpCommand(
            "Page.printToPDF", Map.of("paperWidth", paperInches[0], "paperHeight", paperInches[1]));
    return Base64.getDecoder().decode((String) answer.get("data"));
  }

  private int sheets(double[] paperInches) {
    return (int)
        Pattern.compile("/Type\\s*/Page[^s]")
            .matcher(new String(pdf(paperInches), StandardCharsets.ISO_8859_1))
            .results()
            .count();
  }

  private void wait(String css) {
    soon().until(d -> !d.findElements(By.cssSelector(css)).isEmpty());
  }
}
