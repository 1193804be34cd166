package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.figures.Tables;

/** The car's tables: on the phone, and by the command. */
class TablePagesTest {
  @TempDir Path folder;

  @Test
  void the_book_leads_to_every_table_of_the_car_and_each_comes_as_a_file() throws Exception {
    try (Shop shop = new Shop(folder)) {
      String car = "/cars/" + new Marmot(shop).prepared().measured().car;
      assertTrue(shop.get(car + "/book").is(200).html().contains("href=\"" + car + "/tables\""));
      Page list = shop.get(car + "/tables").is(200);
      for (String table :
          List.of("entries", "readings", "heights", "limits", "corners", "settings")) {
        assertTrue(list.html().contains(car + "/tables/" + table + "\""), table);
      }
      Page readings = shop.get(car + "/tables/readings").is(200);
      assertEquals("text/csv; charset=utf-8; header=present", header(readings, "Content-Type"));
      assertEquals(
          "attachment; filename=\"" + car.substring("/cars/".length()) + "-readings.csv\"",
          header(readings, "Content-Disposition"));
      assertTrue(readings.html().startsWith("car,corner,at,who,key,height,"), readings.html());
      shop.get(car + "/tables/nothing").is(404);
      shop.get("/cars/nobody/tables").is(404);
    }
  }

  @Test
  void the_command_writes_what_the_page_gives() throws Exception {
    try (Shop shop = new Shop(folder)) {
      String car = "/cars/" + new Marmot(shop).prepared().measured().car;
      Path tables = folder.resolve("tables");
      Tables.write(folder.resolve("book.jsonl"), tables, told -> {});
      for (String table : List.of("entries", "readings", "limits")) {
        assertEquals(
            shop.get(car + "/tables/" + table).html(),
            Files.readString(
                tables.resolve(car.substring("/cars/".length()) + "-" + table + ".csv")));
      }
    }
  }

  private static String header(Page page, String name) {
    return page.headers().firstValue(name).orElse("");
  }
}
