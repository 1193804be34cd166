package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Quantity;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.HeldAtWheel;

/**
 * The demo's left front with its strap read on the strap alone: the joints laid out tell the rest.
 */
class StrapByLinkageTest {
  @TempDir Path folder;

  private static HeldAtWheel held(CarBook book) {
    return CornerTravel.of(book.card("marmot-lf")).droop().heldBack().orElseThrow();
  }

  @Test
  void where_the_strap_was_read_at_one_height_the_linkage_gives_its_ratio() {
    DemoBook.copyTo(folder);
    CarBook whole = CarsOfFile.of(BookFile.read(folder.resolve("book.jsonl"))).get("marmot");
    List<Noted> few =
        whole.entries().stream()
            .filter(
                e ->
                    !(e.content() instanceof Content.Reading r
                        && r.quantity() == Quantity.STRAP_LENGTH
                        && r.height().startsWith("lf-")
                        && whole.standing(r.height()).orElseThrow() instanceof Content.Height h
                        && h.name() != HeightName.ON_THE_STRAP))
            .toList();
    HeldAtWheel read = held(whole);
    HeldAtWheel modelled = held(CarBook.of(few));
    assertFalse(read.modelled());
    assertTrue(modelled.modelled());
    double apart = Math.abs(read.ratio().value() - modelled.ratio().value());
    assertTrue(apart <= read.ratio().U() + modelled.ratio().U(), "apart by " + apart);
    assertTrue(modelled.ratio().U() > 0.005, "its doubt is the tape's: " + modelled.ratio());
    assertEquals(0.53, modelled.ratio().value(), 0.05);
  }
}
