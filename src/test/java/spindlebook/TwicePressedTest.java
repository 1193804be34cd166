package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The same form sent more than once, and two people at one car. */
class TwicePressedTest {
  private static final int AT_ONCE = 8;

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;
  private Form annsForm;
  private String annsAnswer;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
  }

  @AfterEach
  void close() {
    shop.close();
  }

  @Test
  void every_form_sent_again_is_stored_once_and_gets_the_first_answer() {
    List<Form> forms = new ArrayList<>();
    forms.add(shop.get("/cars/new").form("/cars").with("name", "Badger"));
    forms.add(sent("/cars/" + marmot.car + "/details", "name", "Marmot the Second"));
    forms.add(sent("/corners/" + marmot.left + "/given", "stop-crush", "1 1/2"));
    forms.add(
        sent("/corners/" + marmot.left + "/watch-points", "place", "shock-frame")
            .with("least", "1/4"));
    String round = marmot.startRound(marmot.left, Map.of());
    Form height = marmot.heightForm(round, "on-the-strap", "15 3/16").with("mark", "31 5/8");
    forms.add(height);
    Form strap = change("limit-strap", "18 3/8");
    forms.add(strap);
    forms.add(
        shop.get("/cars/" + marmot.car + "/happenings/new")
            .form("/cars/" + marmot.car + "/happenings")
            .with("what", "driven"));
    for (Form form : forms) {
      Page first = form.keep();
      List<String> book = shop.lines();
      Page second = form.keep();
      assertEquals(first.location(), second.location(), form.action());
      assertEquals(book, shop.lines(), form.action());
      shop.browser.follow(second).is(200);
    }
    Form reading =
        marmot
            .readingForm(height.key(), "straight", Marmot.TIE_ROD)
            .with("v-" + Marmot.TIE_ROD, "5/32");
    Page first = reading.keep();
    String counts = "/entries/" + reading.key() + "/take-back";
    Form back = shop.browser.follow(first).form(counts);
    assertEquals(first.location(), reading.keep().location());
    Page gone = back.keep();
    List<String> book = shop.lines();
    assertEquals(gone.location(), back.keep().location());
    assertEquals(book, shop.lines());
    shop.browser.follow(gone).is(200);
  }

  @Test
  void what_is_taken_off_a_list_twice_gets_the_first_answer() {
    for (String thing :
        List.of(
            "/corners/" + marmot.left + "/watch-points/hose-slack",
            "/corners/" + marmot.left + "/adjusters/hose",
            "/cars/" + marmot.car + "/tools/drills")) {
      Form form = shop.get(thing).is(200).form(thing + "/retire");
      Page first = form.keep();
      List<String> book = shop.lines();
      assertEquals(first.location(), form.keep().location());
      assertEquals(book, shop.lines());
      form.with("key", form.key() + "x").send().is(404);
    }
  }

  @Test
  void the_same_form_from_eight_at_once_is_stored_once() throws Exception {
    String round = marmot.startRound(marmot.left, Map.of());
    String height = marmot.height(round, "on-the-strap", "15 3/16", "31 5/8");
    Form reading =
        marmot.readingForm(height, "straight", Marmot.STRAP).with("v-" + Marmot.STRAP, "18 11/16");
    Form strap = change("limit-strap", "18 3/8");
    Form start =
        shop.get("/corners/" + marmot.left + "/rounds/new")
            .form("/corners/" + marmot.left + "/rounds");
    for (Form form : List.of(reading, strap, start)) {
      int entries = shop.entries();
      Set<String> answers = new HashSet<>();
      for (Page page : atOnce(java.util.Collections.nCopies(AT_ONCE, form::send))) {
        answers.add(page.is(303).location());
      }
      assertEquals(entries + 1, shop.entries(), form.action());
      assertEquals(1, answers.size(), answers.toString());
    }
  }

  @Test
  void an_address_says_what_a_setting_becomes_but_not_which_entry_it_is() {
    String action = "/corners/" + marmot.left + "/adjustments/limit-strap";
    String link = action + "?to=18&why=rain&key=thesame&after=0";
    Form one = shop.get(link).is(200).form(action + "/would-move");
    assertEquals("18", one.value("to"));
    assertEquals("rain", one.value("why"));
    assertNotEquals("thesame", one.key());
    assertNotEquals(one.key(), shop.get(link).is(200).form(action + "/would-move").key());
  }

  @Test
  void the_later_of_two_changes_sees_both_values_and_chooses_his_own() {
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    String later = clash();
    assertEquals("17 7/8 in", setTo(), "the first one holds while nobody has chosen");
    int entries = shop.entries();
    choose(later, "so");
    assertEquals("17 1/2 in", setTo());
    assertEquals(entries + 1, shop.entries());
    assertEquals(annsAnswer, annsForm.keep().location(), "Ann's form sent again gets Ann's answer");
    bothAreTold();
  }

  @Test
  void the_later_of_two_changes_sees_both_values_and_leaves_the_others() {
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    String later = clash();
    choose(later, "not");
    assertEquals("17 7/8 in", setTo());
    bothAreTold();
    assertEquals(0, shop.figures(marmot.left).get("inDoubt").size());
  }

  /** Ann and Bo both look at 18 3/8; Ann keeps 17 7/8, then Bo keeps 17 1/2. */
  private String clash() {
    Form ann = change("limit-strap", "17 7/8").in(shop.as("Ann"));
    Form bo = change("limit-strap", "17 1/2").in(shop.as("Bo"));
    annsForm = ann;
    annsAnswer = ann.keep().location();
    Page both = shop.browser.follow(bo.keep()).is(200);
    assertTrue(both.text().contains("17 7/8 in"), both.text());
    assertTrue(both.text().contains("17 1/2 in"), both.text());
    String twice = bo.keep().location();
    assertEquals("/entries/" + bo.key(), twice);
    return bo.key();
  }

  private void choose(String entry, String said) {
    String address = "/entries/" + entry + "/answer";
    shop.get("/entries/" + entry).form(address).with("answer", said).keep();
  }

  private void bothAreTold() {
    String book = shop.get("/cars/" + marmot.car + "/book?adjuster=limit-strap").is(200).text();
    assertTrue(book.contains("Ann") && book.contains("to 17 7/8 in"), book);
    assertTrue(book.contains("Bo") && book.contains("to 17 1/2 in"), book);
    assertTrue(book.contains("answered"), book);
  }

  @Test
  void of_many_changes_at_the_same_moment_one_holds_and_all_others_wait() throws Exception {
    marmot.adjust(marmot.left, "limit-strap", "18 3/8");
    List<Callable<Page>> changes = new ArrayList<>();
    for (int i = 0; i < AT_ONCE; i++) {
      Form form = change("limit-strap", (10 + i) + " in");
      changes.add(form::send);
    }
    int entries = shop.entries();
    for (Page page : atOnce(changes)) {
      page.is(303);
    }
    assertEquals(entries + AT_ONCE, shop.entries());
    assertEquals(AT_ONCE - 1, shop.figures(marmot.left).get("inDoubt").size());
  }

  private Form change(String adjuster, String to) {
    String action = "/corners/" + marmot.left + "/adjustments/" + adjuster;
    return shop.get(action)
        .is(200)
        .form(action + "/would-move")
        .with("to", to)
        .send()
        .is(200)
        .form(action);
  }

  private Form sent(String action, String name, String value) {
    String page = action.endsWith("/watch-points") ? action + "/new" : action;
    return shop.get(page).is(200).form(action).with(name, value);
  }

  private String setTo() {
    for (JsonNode setting : shop.figures(marmot.left).get("settings")) {
      if (setting.get("adjuster").asText().equals("limit-strap")) {
        return setting.get("setTo").asText();
      }
    }
    throw new AssertionError("no strap");
  }

  private static List<Page> atOnce(List<? extends Callable<Page>> all) throws Exception {
    ExecutorService people = Executors.newFixedThreadPool(all.size());
    CyclicBarrier go = new CyclicBarrier(all.size());
    try {
      List<Future<Page>> answers = new ArrayList<>();
      for (Callable<Page> one : all) {
        answers.add(
            people.submit(
                () -> {
                  go.await();
                  return one.call();
                }));
      }
      List<Page> pages = new ArrayList<>();
      for (Future<Page> answer : answers) {
        pages.add(answer.get());
      }
      return pages;
    } finally {
      people.shutdownNow();
    }
  }
}
