package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.log.Book;
import spindlebook.log.Draft;

/**
 * A book of which no sum can be made: its three heights lie 1e-310 mm apart, read by tools without
 * doubt, so that a ratio between them is no number. Nobody's tape reads that; it stands for the
 * next fault that nobody knows of.
 */
class NotWorkedOutPagesTest {
  private static final String NOT = "could not be worked out";
  private static final List<String> PAGES =
      List.of(
          "/cars",
          "/cars/car",
          "/cars/car/drive-check",
          "/cars/car/book",
          "/cars/car/sign-offs/new",
          "/corners/lf",
          "/corners/lf/limits",
          "/corners/lf/curves",
          "/corners/lf/print",
          "/corners/lf/rounds/new",
          "/rounds/r",
          "/heights/h1",
          "/heights/h1/correct",
          "/entries/gap1",
          "/readings/gap1/correct",
          "/readings/stop-gap1/correct");

  @Test
  void a_finding_that_fails_takes_no_page_and_what_it_rests_on_can_be_corrected(
      @TempDir Path folder) throws Exception {
    write(folder);
    try (Shop shop = new Shop(folder)) {
      Map<String, Integer> wrong = new LinkedHashMap<>();
      for (String page : PAGES) {
        int status = shop.get(page).status();
        if (status != 200) {
          wrong.put(page, status);
        }
      }
      assertEquals(Map.of(), wrong);
      String corner = shop.get("/corners/lf").text();
      assertTrue(corner.contains(NOT), corner);

      correct(shop, "/readings/stop-gap1/correct", "value", "70 mm");
      assertEquals(70, shop.figures("lf").at("/readings/5/mm/value").asDouble(), 1e-9);
      correct(shop, "/heights/h1/correct", "spindle", "100 mm");
      correct(shop, "/heights/h2/correct", "spindle", "200 mm");
      assertFalse(shop.figures("lf").toString().contains(NOT), shop.figures("lf").toString());
      assertFalse(shop.get("/corners/lf").is(200).text().contains(NOT));
    }
  }

  private static void correct(Shop shop, String address, String field, String value) {
    Form form = shop.get(address).is(200).form(address);
    form.with(field, value).with("reason", "read the wrong tape").keep();
  }

  private static void write(Path folder) throws Exception {
    try (Book book = Book.open(folder, Clock.systemUTC(), t -> {})) {
      List<Draft> drafts = new ArrayList<>();
      drafts.add(
          draft(
              "car",
              "car",
              """
              {"details":{"name":"Dune","unit":"mm"},"tools":[\
              {"tool":"tape","name":"tape","use":"tape","graduation":"0 mm","placingHalfWidth":"0 mm"}]}\
              """));
      drafts.add(
          draft(
              "lf",
              "corner",
              """
              {"car":"car","place":"left-front","layout":"steered-double-a-arm","watchPoints":[\
              {"point":"arm","place":"lower-arm-frame","keep":{"least":"6 mm"}}],\
              "heldBack":[{"allowance":"strap-stretch","percent":5}],\
              "given":[{"dimension":"new-strap-length","length":"500 mm"},\
              {"dimension":"stop-crush","length":"30 mm"}]}\
              """));
      drafts.add(
          draft(
              "r",
              "round",
              """
              {"corner":"lf","springIn":false,"bumpStopIn":true,"wheelOn":false,"onTyres":false,\
              "steeringLinked":true,"tape":"tape","gapTool":"tape"}\
              """));
      List<String> names = List.of("on-the-strap", "in-between", "stop-touch");
      for (int i = 0; i < names.size(); i++) {
        drafts.add(height(i, names.get(i)));
        drafts.add(reading("gap", i, "watch-point\",\"point\":\"arm", 4 + 8 * i));
        drafts.add(reading("strap", i, "strap-length", 500 - 40 * i));
        if (i < 2) {
          drafts.add(reading("stop-gap", i, "stop-gap", 140 - 60 * i));
        }
      }
      book.append(drafts);
    }
  }

  private static Draft height(int i, String name) throws Exception {
    return draft(
        "h" + i,
        "height",
        """
        {"round":"r","name":"%s","mark":"0 mm",\
        "spindle":{"typed":"0 mm","mm":%s,"unit":"mm","rule":"tape-1"}}\
        """
            .formatted(name, i * 1e-310));
  }

  private static Draft reading(String key, int i, String of, int mm) throws Exception {
    return draft(
        key + i,
        "reading",
        """
        {"height":"h%d","steering":"straight","quantity":"%s","result":"number","length":"%d mm"}\
        """
            .formatted(i, of, mm));
  }

  private static Draft draft(String key, String kind, String body) throws Exception {
    return new Draft(key, kind, 1, 0, "Sam", null, null, new ObjectMapper().readTree(body));
  }
}
