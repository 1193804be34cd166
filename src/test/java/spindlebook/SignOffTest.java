package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The drive check and signing off, through their pages. */
class SignOffTest {
  private static final String WHY = "only round the yard, to hear the \"clunk\" <b>again</b>";

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private String check;
  private String signOffs;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop).prepared().measured().measuredOn();
    check = "/cars/" + marmot.car + "/drive-check";
    signOffs = "/cars/" + marmot.car + "/sign-offs";
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private Form form() {
    return shop.get(signOffs + "/new").is(200).form(signOffs).with("why", WHY);
  }

  private JsonNode lastBody() throws Exception {
    List<String> lines = shop.lines();
    return new ObjectMapper().readTree(lines.get(lines.size() - 1)).get("body");
  }

  @Test
  void the_check_tells_corner_by_corner_and_the_car_page_leads_to_it() {
    Page page = shop.get(check).is(200);
    String text = page.text();
    assertTrue(text.contains("7 to do before driving"), text);
    assertTrue(text.contains("Not signed off yet."), text);
    assertTrue(text.contains("Right front not measured"), text);
    assertTrue(text.contains("Measure right front, nothing read yet"), text);
    assertTrue(text.contains("Torque upper rod ends, jam nuts"), text);
    String sign = shop.get(signOffs + "/new").is(200).text();
    assertTrue(sign.contains("7 things first"), sign);
    assertTrue(sign.contains("Right front not measured no round yet"), sign);
    assertTrue(sign.contains("No round yet: nothing was ever measured here."), sign);
    // One word for one thing: beside the corner as above the list.
    assertTrue(sign.contains("3 loosened") && sign.contains("Loosened: 3"), sign);
    assertFalse(sign.contains("opened"), sign);
    String signed = shop.browser.follow(form().keep()).is(200).text();
    assertTrue(signed.contains("left front · Loosened"), signed);
    assertFalse(signed.contains("Opened"), signed);
    assertTrue(signed.contains("Left front Past a limit"), signed);
    assertTrue(sign.contains("Upper rod ends, jam nuts: touched, not said to be tight."), sign);
    assertTrue(text.contains("Not in the book: left rear, right rear."), text);
    assertTrue(text.contains("licensed inspection stand above"), text);
    assertFalse(text.toLowerCase(java.util.Locale.ROOT).contains("safe"), text);
    String car = shop.get("/cars/" + marmot.car).is(200).text();
    assertTrue(car.contains("7 to do before driving"), car);
    assertEquals(404, shop.get("/cars/none/drive-check").status());
  }

  /** By where one stands; what a tap settles is ticked there, and the page comes back. */
  @Test
  void a_job_and_a_loosened_fastener_are_ticked_where_they_stand() {
    marmot.send("/cars/" + marmot.car + "/to-do", Map.of("words", "Grind tab"));
    Page car = shop.get(check + "?at=car").is(200);
    assertTrue(car.text().contains("At the whole car stop 3 of 3 Grind tab"), car.text());
    assertTrue(car.text().contains("8 to do before driving"), car.text());
    Matcher toDo = Pattern.compile("action=\"(/to-do/[^\"]+/done)\"").matcher(car.html());
    assertTrue(toDo.find(), car.html());
    assertEquals(check, car.form(toDo.group(1)).keep().location());
    String left = check + "?at=" + marmot.left;
    Page there = shop.get(left).is(200);
    assertTrue(there.text().contains("At the left front stop 1 of 2"), there.text());
    assertTrue(there.text().contains("7 to do before driving"), there.text());
    String bolts = "/corners/" + marmot.left + "/fasteners/upper-rod-ends";
    assertEquals(left, there.form(bolts).keep().location());
    String after = shop.get(left).is(200).text();
    assertTrue(after.contains("6 to do before driving"), after);
    assertFalse(after.contains("Torque upper rod ends"), after);
    assertTrue(after.contains("Next: right front ›"), after);
  }

  @Test
  void a_sign_off_keeps_a_copy_with_the_hash_of_the_line_it_was_made_at() throws Exception {
    int entries = shop.entries();
    Page next = form().with("who", "Ada").keep();
    assertEquals(entries + 1, shop.entries());
    JsonNode body = lastBody();
    assertEquals(entries, body.get("n").asInt());
    byte[] line = shop.lines().get(entries).getBytes(StandardCharsets.UTF_8);
    assertEquals(
        HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(line)),
        body.get("hash").asText());
    assertEquals(7, body.get("open").size());
    assertEquals(WHY, body.get("why").asText());
    JsonNode margin = null;
    for (JsonNode f : body.at("/corners/0/figures")) {
      margin = f.get("name").asText().equals("droop: margin") ? f : margin;
    }
    JsonNode computed = shop.figures(marmot.left).at("/droop/marginMm");
    assertEquals(computed.get("value").asDouble(), margin.get("mm").asDouble(), 1e-4);
    assertEquals(computed.get("U").asDouble(), margin.get("expandedMm").asDouble(), 1e-4);

    Page kept = shop.browser.follow(next).is(200);
    assertTrue(kept.text().contains("Signed off by Ada"), kept.text());
    assertTrue(kept.text().contains(WHY), kept.text());
    assertFalse(kept.html().contains("<b>again"), kept.html());
    assertTrue(
        kept.text().contains("Computed anew from entries 1 to " + entries + " today: the same."),
        kept.text());
    assertTrue(shop.get(check).text().contains("by Ada, nothing since."), shop.get(check).text());
    assertTrue(shop.get("/cars/" + marmot.car).text().contains("nothing since"));
    assertTrue(shop.get(signOffs).text().contains("7 things open"), shop.get(signOffs).text());
  }

  @Test
  void what_was_kept_stays_as_it_was_kept_whatever_comes_later() {
    String address = form().keep().location();
    String before = kept(address);
    marmot.adjust(marmot.left, "limit-strap", "17");
    marmot.send(
        "/corners/" + marmot.left + "/watch-points/tie-rod-upper-arm", Map.of("least", "3/8"));
    String correct = "/heights/" + marmot.low + "/correct";
    Form height =
        shop.get(correct).is(200).form(correct).with("spindle", "18 3/4").with("reason", "slip");
    height.keep();
    shop.reopen();
    assertEquals(before, kept(address));
    String text = shop.get(address).text();
    assertTrue(text.contains("today: the same."), text);

    String since = shop.get(address + "/since").is(200).text();
    assertTrue(since.contains("3 entries since."), since);
    assertTrue(since.contains("limit strap left front 18 3/8 in 17 in"), since);
    assertTrue(
        since.contains("tie rod to upper arm left front at least 1/4 in at least 3/8 in"), since);
    assertTrue(since.contains("Corrections of what was known then: 1"), since);
    assertTrue(since.contains("Settings and happenings: 1"), since);
    assertTrue(since.contains("Decided otherwise"), since);
    String car = shop.get("/cars/" + marmot.car).text();
    assertTrue(car.contains("signed off 4 May 2031, 3 entries since"), car);
  }

  /** All of the page but what came since. */
  private String kept(String address) {
    StringBuilder all = new StringBuilder();
    for (String corner : List.of(marmot.left, marmot.right)) {
      Page page = shop.get(address + "?corner=" + corner).is(200);
      all.append(page.text().replaceAll("What changed since: \\d+ \\w+ since", ""));
    }
    return all.toString();
  }

  @Test
  void something_open_wants_a_sentence_and_nothing_typed_is_lost() {
    int entries = shop.entries();
    Page page = form().with("why", "  ").with("who", "Ben").send().is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    assertTrue(
        page.text().contains("Say in a sentence why it is signed with 7 things open."),
        page.text());
    assertEquals("Ben", page.form(signOffs).value("who"));
    // The box lies below all that is open.
    assertTrue(page.html().contains("autofocus aria-invalid=\"true\""), page.html());
    page = form().with("who", "").send().is(422);
    assertEquals(WHY, page.form(signOffs).value("why"));
    assertEquals("", page.form(signOffs).value("who"));
    page = form().with("why", "x".repeat(501)).send().is(422);
    assertEquals(1, BadInputTest.problems(page).size(), page.text());
    assertEquals(entries, shop.entries());
  }

  @Test
  void what_came_between_showing_and_signing_is_shown_and_asked_again() throws Exception {
    Form shown = form();
    marmot.adjust(marmot.left, "limit-strap", "17");
    int entries = shop.entries();
    Page again = shown.send().is(422);
    assertEquals(entries, shop.entries());
    assertTrue(
        again.text().contains("Nothing was signed: 1 entry came into the book meanwhile."),
        again.text());
    assertTrue(again.text().contains("limit strap from 18 3/8 in to 17 in"), again.text());
    Form second = again.form(signOffs);
    assertEquals(WHY, second.value("why"));
    assertEquals(shown.key(), second.key());
    assertNotEquals(shown.value("n"), second.value("n"));
    second.keep();
    assertEquals(entries, lastBody().get("n").asInt());
    assertTrue(lastBody().toString().contains("\"to\":\"17 in\""), lastBody().toString());
  }

  @Test
  void a_position_that_was_never_shown_is_asked_again() {
    int entries = shop.entries();
    for (String n : new String[] {"", "0", "-4", "999999", "one", "1e3"}) {
      Page page = form().with("n", n).send().is(422);
      assertTrue(page.text().contains("Nothing was signed"), page.text());
    }
    assertEquals(entries, shop.entries());
  }

  @Test
  void sent_twice_it_is_kept_once_with_the_first_answer() {
    Form form = form();
    String first = form.keep().location();
    List<String> book = shop.lines();
    assertEquals(first, form.keep().location());
    assertEquals(book, shop.lines());
  }

  @Test
  void eight_at_once_keep_one_copy_and_none_is_of_a_book_that_was_never_there() throws Exception {
    Form form = form();
    int entries = shop.entries();
    CyclicBarrier start = new CyclicBarrier(9);
    ExecutorService hands = Executors.newFixedThreadPool(9);
    try {
      List<Callable<Page>> work = new ArrayList<>();
      for (int i = 0; i < 8; i++) {
        work.add(
            () -> {
              start.await();
              return form.send();
            });
      }
      String toDo = "/cars/" + marmot.car + "/to-do";
      Form other = shop.get(toDo).form(toDo).with("words", "meanwhile");
      work.add(
          () -> {
            start.await();
            return other.send();
          });
      for (Future<Page> done : hands.invokeAll(work)) {
        assertTrue(List.of(303, 422).contains(done.get().status()), done.get().text());
      }
    } finally {
      hands.shutdown();
    }
    long kept = shop.lines().stream().filter(l -> l.contains("\"kind\":\"sign-off\"")).count();
    assertTrue(kept <= 1, "one key, one entry");
    assertEquals(entries + 1 + kept, shop.entries());
    if (kept == 1) {
      String page = shop.get("/sign-offs/" + form.key()).is(200).text();
      assertTrue(page.contains("today: the same."), page);
    }
  }

  @Test
  void who_may_only_look_sees_it_and_cannot_sign() {
    String address = form().keep().location();
    Browser looker = shop.looker();
    int entries = shop.entries();
    assertEquals(403, form().in(looker).send().status());
    assertEquals(entries, shop.entries());
    looker.get(address).is(200);
    looker.get(address + "/since").is(200);
    looker.get(check).is(200);
  }

  @Test
  void one_taken_back_says_so_and_counts_no_more() {
    String address = form().keep().location();
    String key = address.substring("/sign-offs/".length());
    String back = "/entries/" + key + "/take-back";
    shop.get("/entries/" + key).is(200).form(back).with("reason", "wrong car").keep();
    assertTrue(shop.get(address).is(200).text().contains("This sign-off was withdrawn."));
    assertTrue(shop.get(signOffs).text().contains("withdrawn ·"), shop.get(signOffs).text());
    assertTrue(shop.get(check).text().contains("Not signed off yet."), shop.get(check).text());
  }

  @Test
  void what_is_no_sign_off_has_no_such_page() {
    for (String key : List.of("none", marmot.car, marmot.left, marmot.low)) {
      assertEquals(404, shop.get("/sign-offs/" + key).status(), key);
      assertEquals(404, shop.get("/sign-offs/" + key + "/since").status(), key);
    }
    assertEquals(404, shop.get("/cars/none/sign-offs/new").status());
    assertEquals(404, shop.get("/corners/none/print").status());
  }

  @Test
  void a_corner_prints_with_its_figures_and_what_is_to_see_to() {
    String print = shop.get("/corners/" + marmot.left + "/print").is(200).text();
    assertTrue(print.contains("Marmot, left front"), print);
    assertTrue(print.contains("Limit strap 18 3/8 in"), print);
    assertTrue(print.contains("Loosened: Upper rod ends, jam nuts"), print);
    String corner = shop.get("/cars/" + marmot.car).text();
    for (String finding : List.of("Droop: ", "Bump: ")) {
      int at = corner.indexOf(finding);
      assertTrue(print.contains(corner.substring(at, corner.indexOf('.', at))), print);
    }
    String bare = shop.get("/corners/" + marmot.right + "/print").is(200).text();
    assertTrue(bare.contains("No round yet"), bare);
  }
}
