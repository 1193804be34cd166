package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.figures.Figures;

/** What a sign-off keeps of alignment, and what is told of it since. */
class SignedAlignmentTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;
  private Shop shop;
  private Marmot marmot;

  @BeforeEach
  void open() {
    shop = new Shop(folder);
    marmot = new Marmot(shop);
    measure("gauge", Map.of("read", "-0.5", "zero", "0"));
    measure("tape", Map.of("front", "1577 mm", "rear", "1583.35 mm", "across", "711.2 mm"));
    target(Map.of("camber-from", "-1", "camber-to", "0", "trail-from", "1 in"));
  }

  @AfterEach
  void close() {
    shop.close();
  }

  private void measure(String way, Map<String, String> fields) {
    String action = "/corners/" + marmot.left + "/alignment";
    Map<String, String> all = new LinkedHashMap<>(fields);
    all.put("rolled", "yes");
    marmot.send(action + "/new?way=" + way, action, all);
  }

  private void target(Map<String, String> fields) {
    marmot.send("/corners/" + marmot.left + "/alignment/targets", fields);
  }

  private String sign() {
    String action = "/cars/" + marmot.car + "/sign-offs";
    return marmot
        .send(action + "/new", action, Map.of("why", "round the yard", "who", "Ada"))
        .location();
  }

  private JsonNode kept() throws IOException {
    List<String> lines = shop.lines();
    return JSON.readTree(lines.get(lines.size() - 1)).get("body");
  }

  private String since(String signOff) {
    return shop.get(signOff + "/since").is(200).text();
  }

  @Test
  void a_sign_off_keeps_alignment_against_its_targets_and_what_the_axle_has_once()
      throws Exception {
    String signOff = sign();
    JsonNode left = kept().at("/corners/0/alignment");
    JsonNode camber = left.get(0);
    assertEquals("camber", camber.get("figure").asText());
    assertEquals(Math.toRadians(-0.5), camber.get("value").asDouble(), 1e-8);
    assertEquals("clear", camber.get("outcome").asText());
    assertEquals("−1° to 0°", camber.get("target").asText());
    assertTrue(left.toString().contains("total-toe"), left.toString());
    JsonNode trail = left.get(2);
    assertEquals("trail", trail.get("figure").asText());
    assertFalse(trail.has("value"), "a target for what was not known is kept as well");
    assertFalse(kept().at("/corners/1/alignment").toString().contains("total-toe"));
    Page page = shop.get(signOff + "?corner=" + marmot.left).is(200);
    assertTrue(page.text().contains("Camber target −1° to 0° −0.50° ± 0.1"), page.text());
    assertTrue(page.text().contains("Trail target at least 1 in, not known"), page.text());
    assertTrue(page.text().contains("today: the same."), page.text());
    assertEquals("[true]", sameToday(), "computed anew from the entries it was made of");
  }

  private String sameToday() throws IOException {
    List<String> same = new ArrayList<>();
    JsonNode car = JSON.readTree(Figures.of(shop.log(), line -> {})).get("cars").get(0);
    car.get("signOffs").forEach(s -> same.add(s.get("sameToday").asText()));
    return same.toString();
  }

  private static boolean has(String text, String pattern) {
    return Pattern.compile(pattern).matcher(text).find();
  }

  @Test
  void what_changed_since_names_alignment() {
    String signOff = sign();
    assertFalse(since(signOff).contains("Alignment"), since(signOff));
    marmot.adjust(marmot.left, "upper-rod-ends", "1");
    String text = since(signOff);
    String then = "Decided otherwise: 1 .*camber left front target −1° to 0° −0.50° [^a-z]*clear ";
    assertTrue(has(text, then + "target −1° to 0° −0.50° [^a-z]*measure again"), text);
    measure("gauge", Map.of("read", "-2", "zero", "0"));
    text = since(signOff);
    assertTrue(has(text, then + "target −1° to 0° −2.00° [^a-z]*too much"), text);
    target(Map.of("camber-from", "-3"));
    text = since(signOff);
    String now = "target −1° to 0° −0.50° [^a-z]*clear target −3° to 0° −2.00° [^a-z]*clear";
    assertTrue(has(text, "Alignment: \\d .*camber left front " + now), text);
    assertTrue(text.contains("Measured: 1"), text);
  }

  @Test
  void a_sign_off_written_before_alignment_was_kept_still_reads_and_is_the_same_today()
      throws Exception {
    String signOff = sign();
    List<String> lines =
        rewrite(
            body ->
                body.get("corners")
                    .forEach(c -> assertTrue(((ObjectNode) c).remove("alignment") != null)));
    Page page = shop.get(signOff + "?corner=" + marmot.left).is(200);
    assertTrue(page.text().contains("Alignment was not kept in sign-offs yet."), page.text());
    assertTrue(page.text().contains("today: the same."), page.text());
    assertEquals("[true]", sameToday());
    measure("gauge", Map.of("read", "-1.5", "zero", "0"));
    String text = since(signOff);
    assertTrue(text.contains("nothing of it is held against that copy"), text);
    assertFalse(text.contains("−1.50"), text);
    assertEquals("[true]", sameToday(), "what came after it does not change it");
    assertEquals(lines, shop.lines().subList(0, lines.size()), "nor is what was signed rewritten");
  }

  @Test
  void a_sign_off_written_when_a_hyphen_was_said_for_a_minus_is_the_same_today() throws Exception {
    String corners = "/cars/" + marmot.car + "/corners";
    marmot.send(corners + "/new", corners, Map.of("end", "rear", "layout", "trailing-arm"));
    String signOff = sign();
    rewrite(
        body -> {
          List<ObjectNode> plunges = new ArrayList<>();
          for (JsonNode rule : body.at("/corners/2/rules")) {
            if (rule.get("of").asText().equals("cv-plunge")) {
              plunges.add((ObjectNode) rule);
            }
          }
          assertEquals(1, plunges.size());
          String says = plunges.get(0).get("says").asText();
          assertEquals("at least −3/8 in and at most 3/8 in", says);
          plunges.get(0).put("says", says.replace('−', '-'));
        });
    assertTrue(kept().toString().contains("at least -3/8 in"), "it is kept with its hyphen");
    assertEquals("[true]", sameToday());
    Page page = shop.get(signOff).is(200);
    assertTrue(page.text().contains("today: the same."), page.text());
    assertFalse(since(signOff).contains("3/8"), since(signOff));
    String rear = marmot.car + "-lr";
    marmot.send(
        "/corners/" + rear + "/watch-points/cv-plunge", Map.of("least", "-1/4", "most", "1-1/8"));
    String text = since(signOff);
    assertTrue(text.contains("at least −3/8 in and at most 3/8 in"), text);
    assertTrue(text.contains("at least −1/4 in and at most 1-1/8 in"), text);
    assertEquals("[true]", sameToday(), "a rule set later is none of that day");
  }

  /** The last line of the book, a sign-off, as an earlier version wrote it; all lines of it. */
  private List<String> rewrite(Consumer<JsonNode> body) throws IOException {
    shop.close();
    Path book = folder.resolve("book.jsonl");
    List<String> lines = new ArrayList<>(Files.readAllLines(book));
    JsonNode last = JSON.readTree(lines.remove(lines.size() - 1));
    body.accept(last.get("body"));
    lines.add(JSON.writeValueAsString(last));
    Files.write(book, lines);
    // An earlier version noted its own line beside the book, not the one written here since.
    Files.delete(folder.resolve("generation.json"));
    Files.deleteIfExists(folder.resolve("index.clean"));
    shop.open();
    return lines;
  }

  @Test
  void a_corner_s_printed_sheet_has_its_alignment() {
    String text = shop.get("/corners/" + marmot.left + "/print").is(200).text();
    assertTrue(text.contains("Alignment: camber −0.50° ± 0.19, clear; "), text);
    assertTrue(text.contains("total toe +0.5"), text);
    String bare = shop.get("/corners/" + marmot.right + "/print").is(200).text();
    assertFalse(bare.contains("camber"), bare);
  }
}
