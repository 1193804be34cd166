package spindlebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import spindlebook.advice.DeepestBump;
import spindlebook.advice.DriveCheck;
import spindlebook.card.TravelWords;
import spindlebook.definition.Layout;
import spindlebook.entry.Content;
import spindlebook.entry.SignedCorner;
import spindlebook.entry.SpringFigure;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.Noted;
import spindlebook.fold.SeenPart;
import spindlebook.fold.SeenSignOff;
import spindlebook.fold.SeenToDo;
import spindlebook.fold.Standing;
import spindlebook.fold.Written;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.ride.CornerRide;
import spindlebook.ride.StrapLasts;
import spindlebook.travel.CornerTravel;
import spindlebook.travel.EndFindings;
import spindlebook.uncertainty.Figure;
import spindlebook.uncertainty.Outcome;

class DemoCarTest {
  @TempDir Path folder;

  private CarBook marmot() {
    DemoBook.copyTo(folder);
    return CarsOfFile.of(BookFile.read(folder.resolve("book.jsonl"))).get("marmot");
  }

  @Test
  void it_has_a_short_gap_a_cant_tell_a_stale_reading_a_correction_and_a_put_back() {
    CarBook marmot = marmot();
    Card left = marmot.card("marmot-lf");
    Card right = marmot.card("marmot-rf");
    assertEquals(Outcome.SHORT, CornerTravel.of(left).droop().outcome());
    assertEquals(Outcome.CANT_TELL, CornerTravel.of(right).droop().outcome());
    assertTrue(left.readings().stream().anyMatch(r -> r.stands() == Standing.STALE));
    assertTrue(right.readings().stream().anyMatch(r -> r.stands() == Standing.PUT_BACK));
    assertEquals("18 3/4 in", left.height("lf-1-mid").orElseThrow().height().spindle().typed());
  }

  @Test
  void the_change_advised_covers_the_margins_own_doubt_as_well() {
    CarBook marmot = marmot();
    for (String corner : List.of("marmot-lf", "marmot-rf")) {
      Card card = marmot.card(corner);
      EndFindings droop = CornerTravel.of(card).droop();
      Figure margin = droop.marginMm().orElseThrow();
      double atWheelMm = droop.cure().orElseThrow().atWheelMm();
      assertTrue(atWheelMm >= margin.U() - margin.value(), corner + ": " + atWheelMm);
    }
    // Marmot's left front: 3/8 in of strap is worth about its shortfall, 5/8 in its doubt as well.
    Card left = marmot.card("marmot-lf");
    String words = new TravelWords(left, CornerTravel.of(left)).cure(CornerTravel.of(left).droop());
    assertTrue(
        words.startsWith(
            "Limit strap 5/8 in shorter, to 19 1/8 in, stops the wheel 1 3/16 in sooner and fixes"
                + " it, ± included"),
        words);
  }

  @Test
  void its_rears_hang_on_trailing_arms_and_their_joints_rule_droop() {
    CarBook marmot = marmot();
    for (String corner : List.of("marmot-lr", "marmot-rr")) {
      Card card = marmot.card(corner);
      assertEquals(Layout.TRAILING_ARM, card.layout());
      EndFindings droop = CornerTravel.of(card).droop();
      assertEquals("cv-angle", droop.rules().orElseThrow().point().point());
      assertEquals(Outcome.CLEAR, droop.outcome(), corner);
      assertEquals(List.of(), card.doubts());
    }
  }

  @Test
  void its_season_is_in_the_book_a_hit_taken_care_of_and_a_ride_height_left_to_be_read_again() {
    CarBook marmot = marmot();
    Noted hit = marmot.entries().stream().filter(e -> e.key().equals("rr-hit")).findFirst().get();
    Card after = marmot.asOf(hit.n()).card("marmot-rr");
    assertTrue(after.readings().stream().noneMatch(r -> r.stands() == Standing.LIVE));
    assertEquals(Outcome.NEEDS, CornerTravel.of(after).droop().outcome());
    Card before = marmot.asOf(hit.n() - 2).card("marmot-rr");
    assertEquals(Outcome.CLEAR, CornerTravel.of(before).droop().outcome());
    assertTrue(CornerTravel.of(marmot.card("marmot-rr")).rideMm().isEmpty());
    for (String corner : List.of("marmot-lf", "marmot-rf", "marmot-lr")) {
      assertTrue(CornerTravel.of(marmot.card(corner)).rideMm().isPresent(), corner);
    }
  }

  @Test
  void its_days_follow_one_another_and_the_last_one_was_just_now() {
    Instant last = Instant.EPOCH;
    for (Noted entry : marmot().entries()) {
      assertTrue(!entry.at().isBefore(last.minus(Duration.ofHours(3))), entry.key());
      last = entry.at();
    }
    Duration ago = Duration.between(last, Instant.now());
    assertTrue(ago.compareTo(Duration.ofDays(1)) > 0, ago.toString());
    assertTrue(ago.compareTo(Duration.ofDays(4)) < 0, ago.toString());
  }

  @Test
  void it_has_something_to_do_and_done_a_touched_fastener_and_a_ring_that_was_read() {
    CarBook marmot = marmot();
    assertEquals(2, marmot.toDos().stream().filter(SeenToDo::open).count());
    assertEquals(3, marmot.toDos().size());
    List<String> open =
        marmot.fasteners().stream()
            .filter(spindlebook.fold.SeenFastener::open)
            .map(f -> f.corner() + " " + f.adjuster().adjuster())
            .toList();
    assertTrue(open.contains("marmot-lf limit-strap"), open.toString());
    assertTrue(!open.contains("marmot-rf tie-rod"), open.toString());
    Card left = marmot.card("marmot-lf");
    Written<Content.Telltale> ring =
        marmot.telltales().stream().filter(t -> t.key().equals("lf-ring")).findFirst().get();
    DeepestBump bump = DeepestBump.of(left, CornerTravel.of(left), ring);
    assertTrue(bump instanceof DeepestBump.At, bump.toString());
  }

  @Test
  void its_springs_carry_it_one_strap_has_a_forecast_and_parts_are_due() {
    CarBook marmot = marmot();
    for (String corner : marmot.corners()) {
      CornerRide ride = CornerRide.of(marmot.card(corner));
      double hz = ride.of(SpringFigure.FREQUENCY).orElseThrow().value().value();
      assertTrue(hz > 0.6 && hz < 1.6, corner + ": " + hz);
      assertEquals(Outcome.CLEAR, ride.of(SpringFigure.COIL_LEFT).orElseThrow().outcome(), corner);
      assertTrue(ride.stops.stream().anyMatch(s -> s.rest().isPresent()), corner);
    }
    StrapLasts right = CornerRide.of(marmot.card("marmot-rf")).strap.orElseThrow();
    assertTrue(right.why().isEmpty(), right.why().toString());
    StrapLasts left = CornerRide.of(marmot.card("marmot-lf")).strap.orElseThrow();
    assertTrue(left.life().orElseThrow().forecast().isEmpty());
    assertEquals(4, marmot.parts().stream().filter(SeenPart::due).count());
    assertTrue(marmot.parts().size() > 15);
  }

  @Test
  void it_was_signed_off_before_its_first_drive_and_the_copy_is_what_stood_then() {
    CarBook marmot = marmot();
    SeenSignOff signed = marmot.lastSignOff().orElseThrow();
    assertEquals("sign-off-1", signed.key());
    CarBook then = marmot.asOf(signed.signOff().n());
    assertTrue(then.uses().isEmpty());
    SignedCorner left = signed.signOff().corners().get(0);
    double margin =
        left.figures().stream()
            .filter(f -> f.name().equals("droop: margin"))
            .findFirst()
            .orElseThrow()
            .mm();
    Figure computed = CornerTravel.of(then.card("marmot-lf")).droop().marginMm().orElseThrow();
    assertEquals(computed.value(), margin, 1e-4);
    assertEquals("short", left.outcome());
    assertEquals(DriveCheck.of(then).things().size(), signed.signOff().open().size());
    assertTrue(signed.since(marmot).stream().anyMatch(e -> e.key().equals("rr-strap-1")));
    BookFile.Contents file = BookFile.read(folder.resolve("book.jsonl"));
    assertEquals(file.hashes().get((int) signed.signOff().n() - 1), signed.signOff().hash());
  }

  @Test
  void its_worst_corner_is_the_one_with_the_least_room_and_the_check_agrees() {
    CarBook marmot = marmot();
    DriveCheck check = DriveCheck.of(marmot);
    DriveCheck.Checked worst = check.worstFirst().get(0);
    assertEquals("marmot-lf", worst.card().corner());
    assertEquals(check.things().get(0), check.worst(worst).orElseThrow());
    assertEquals(Outcome.SHORT, check.worstFirst().get(0).travel().outcome());
    assertEquals(Outcome.CANT_TELL, check.worstFirst().get(1).travel().outcome());
    assertEquals(check.corners().size(), check.worstFirst().size());
  }
}
