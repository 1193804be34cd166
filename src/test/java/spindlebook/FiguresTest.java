package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.figures.Figures;
import spindlebook.log.BookRefused;

/** Every finding of a book as numbers: of a book the program wrote, and of one written by hand. */
class FiguresTest {
  /** Straps and heights of the design's worked example: S 10 above, read from one mark. */
  private static final String BY_HAND =
      """
      {"key":"car","kind":"car","body":{"details":{"name":"Mole","unit":"inch"}}}
      {"key":"lf","kind":"corner","body":{"car":"car","place":"left-front","layout":"steered-double-a-arm","heldBack":[{"allowance":"strap-stretch","percent":0}]}}
      {"key":"r","kind":"round","body":{"corner":"lf","springIn":false,"bumpStopIn":true,"wheelOn":true,"onTyres":false,"steeringLinked":true,"unit":"inch","tape":"tape","gapTool":"drills","angleTool":"angle-finder"}}
      {"key":"s","kind":"height","body":{"round":"r","name":"on-the-strap","spindle":"10 in","mark":"30 in"}}
      {"key":"t","kind":"height","body":{"round":"r","name":"ride","spindle":"15 1/2 in","markAsAt":"s"}}
      """;

  private final List<String> told = new ArrayList<>();

  private JsonNode figures(Path file) throws Exception {
    return new ObjectMapper().readTree(Figures.of(file, told::add));
  }

  @Test
  void of_a_sealed_book_they_are_what_the_pages_show(@TempDir Path folder) throws Exception {
    try (Shop shop = new Shop(folder)) {
      Marmot marmot = new Marmot(shop).prepared().measured().measuredOn();
      JsonNode all = figures(shop.log());
      assertTrue(all.get("sealed").asBoolean());
      assertEquals(shop.entries(), all.get("entries").asInt());
      assertEquals(List.of(), told);
      assertEquals("Marmot", all.at("/cars/0/name").asText());
      JsonNode left = all.at("/cars/0/corners/0");
      String page = shop.get("/corners/" + marmot.left).is(200).text();
      String car = shop.get("/cars/" + marmot.car).is(200).text();
      String finding = left.at("/droop/finding").asText();
      assertTrue(page.contains(finding), page);
      assertTrue(car.contains(finding), car);
      assertTrue(page.contains(left.at("/bump/finding").asText()), page);
      assertTrue(page.contains("to " + left.at("/droop/cure/to").asText()), page);
      for (String figure : List.of("/asSet/mm", "/asItCouldBe/mm")) {
        String shown =
            spindlebook.units.TapeFormat.inches(left.at(figure + "/value").asDouble(), 16) + " in";
        assertTrue(page.contains(shown), () -> shown + " is not on: " + page);
      }
    }
  }

  @Test
  void a_book_written_by_hand_is_read_and_said_to_be_unsealed(@TempDir Path folder)
      throws Exception {
    JsonNode all = figures(Files.writeString(folder.resolve("mole.jsonl"), BY_HAND));
    assertFalse(all.get("sealed").asBoolean());
    assertEquals(1, told.size(), told.toString());
    assertTrue(told.get(0).contains("unsealed"), told.get(0));
    JsonNode left = all.at("/cars/0/corners/0");
    assertEquals(-20 * 25.4, left.at("/droop/stopMm/value").asDouble(), 1e-9);
    assertEquals(-14.5 * 25.4, left.at("/rideMm/value").asDouble(), 1e-9);
    assertEquals(5.5 * 25.4, left.at("/rawMm/value").asDouble(), 1e-9);
    assertEquals("needs", left.get("outcome").asText());
  }

  @Test
  void a_limit_between_two_heights_gives_both_ends(@TempDir Path folder) throws Exception {
    String watched =
        BY_HAND.replace(
                "\"heldBack\"",
                "\"watchPoints\":[{\"point\":\"arm\",\"place\":\"lower-arm-frame\",\"keep\":{\"least\":\"1/4"
                    + " in\"}}],\"heldBack\"")
            + """
            {"key":"g","kind":"reading","body":{"height":"s","steering":"straight","quantity":"watch-point","point":"arm","result":"touches"}}
            {"key":"h","kind":"reading","body":{"height":"t","steering":"straight","quantity":"watch-point","point":"arm","result":"well-clear"}}
            """;
    JsonNode all = figures(Files.writeString(folder.resolve("mole.jsonl"), watched));
    JsonNode limit = all.at("/cars/0/corners/0/droop/limits/0");
    assertEquals("bracket", limit.get("found").asText());
    assertEquals(-14.5 * 25.4, limit.at("/between/keptMm/value").asDouble(), 1e-9);
    assertEquals(-20 * 25.4, limit.at("/between/brokenMm/value").asDouble(), 1e-9);
    assertEquals("kept", limit.at("/between/plannedFrom").asText());
  }

  @Test
  void what_nobody_could_have_typed_is_told_in_one_sentence(@TempDir Path folder) throws Exception {
    String given =
        """
        {"key":"d","kind":"definition","body":{"corner":"lf","given":{"dimension":"stop-crush","length":"1 in","halfWidth":"-1/4 in"}}}
        """;
    String tool =
        """
        {"key":"d","kind":"definition","body":{"car":"car","tool":{"tool":"tape","name":"tape","use":"tape","graduation":"1/16 in","classHalfWidth":"-1/4 in"}}}
        """;
    String far = "{\"typed\":\"10 in\",\"mm\":-1e308,\"unit\":\"inch\",\"rule\":\"tape-1\"}";
    String turned = "{\"typed\":\"1\",\"rad\":1e300,\"rule\":\"angle-1\"}";
    for (String book :
        List.of(
            BY_HAND + given,
            BY_HAND + tool,
            BY_HAND.replace("\"10 in\"", far),
            BY_HAND.replace("\"unit\":\"inch\",\"tape\"", "\"rake\":" + turned + ",\"tape\""))) {
      assertNotEquals(BY_HAND, book);
      Path file = Files.writeString(folder.resolve("mole.jsonl"), book);
      BookRefused refused = assertThrows(BookRefused.class, () -> figures(file), book);
      assertEquals(1, refused.getMessage().lines().count());
    }
  }

  @Test
  void a_car_or_corner_that_was_withdrawn_by_hand_stays(@TempDir Path folder) throws Exception {
    JsonNode whole = figures(Files.writeString(folder.resolve("mole.jsonl"), BY_HAND));
    for (String target : List.of("car", "lf")) {
      for (String body :
          List.of("", ",\"kind\":\"happening\",\"body\":{\"car\":\"car\",\"what\":\"driven\"}")) {
        String withdrawn =
            "{\"kind\":\"correction\",\"body\":{\"target\":\""
                + target
                + "\""
                + body
                + ",\"reason\":\"x\"}}\n";
        JsonNode left =
            figures(Files.writeString(folder.resolve("mole.jsonl"), BY_HAND + withdrawn));
        assertEquals(
            whole.at("/cars/0/corners/0/heights"), left.at("/cars/0/corners/0/heights"), withdrawn);
        assertEquals("Mole", left.at("/cars/0/name").asText());
      }
    }
  }

  @Test
  void a_hand_slip_is_told_with_its_line(@TempDir Path folder) throws Exception {
    Path slip =
        Files.writeString(
            folder.resolve("slip.jsonl"), BY_HAND.replace("\"10 in\"", "\"ten-ish\""));
    BookRefused refused = assertThrows(BookRefused.class, () -> figures(slip));
    assertTrue(refused.getMessage().contains("4"), refused.getMessage());
    assertTrue(refused.getMessage().contains("ten-ish"), refused.getMessage());
    assertEquals(1, refused.getMessage().lines().count());
  }
}
