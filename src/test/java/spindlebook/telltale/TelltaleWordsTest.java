package spindlebook.telltale;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import spindlebook.fold.CarBook;
import spindlebook.fold.Card;
import spindlebook.fold.HandBooks;
import spindlebook.travel.CornerTravel;

/**
 * What a telltale says on its page, of the book that meets its rules: 20 in of strap at −10 in, a
 * shock 16 to 29 in long, without tools' steps.
 */
class TelltaleWordsTest {
  private static final String DRIVE =
      "{'kind':'use','body':{'car':'mule','unit':'hours','amount':2}}";

  private static List<String> of(String... later) {
    List<String> lines;
    try (InputStream in =
        TelltaleWordsTest.class.getResourceAsStream("/spindlebook/drivecheck/meets-rules.jsonl")) {
      lines =
          new ArrayList<>(new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    for (String line : later) {
      lines.add(line.replace('\'', '"'));
    }
    CarBook book = HandBooks.of(lines);
    Card card = book.card("lr");
    TelltaleWords words = new TelltaleWords(book, card, CornerTravel.of(card));
    return book.telltales().stream().map(t -> String.join(" ", words.of(t))).toList();
  }

  private static String telltale(String fields) {
    return "{'kind':'telltale','body':{'corner':'lr'," + fields + "}}";
  }

  private static String strap(String length) {
    return telltale("'what':'strap-length','length':'" + length + "'");
  }

  private static String adjust(String adjuster, String to) {
    return "{'kind':'adjustment','body':{'corner':'lr','adjuster':'%s','to':'%s'}}"
        .formatted(adjuster, to);
  }

  @Test
  void a_straps_length_at_a_re_check_is_held_against_the_last_that_was_read_on_it() {
    assertEquals(
        List.of(
            "As long as it was last read on the strap.",
            "1/4 in longer than last read on the strap.",
            "1/8 in shorter than last read on the strap."),
        of(strap("20 in"), strap("20 1/4 in"), strap("19 7/8 in")));
    assertEquals(
        List.of("It counts for how long the strap lasts: Springs and stops says."),
        of(telltale("'what':'strap-length','length':'20 in','pull':'50 lb'")));
  }

  /** Driven, the reading in the round no longer counts, and the last typed does instead of it. */
  @Test
  void after_a_drive_the_sums_count_the_last_length_typed_and_that_alone_says_so() {
    assertEquals(
        List.of(
            "1/4 in longer than last read on the strap.",
            "3/8 in longer than last read on the strap. The sums count it."),
        of(DRIVE, strap("20 1/4 in"), strap("20 3/8 in")));
  }

  @Test
  void a_doubted_reading_on_the_strap_is_none() {
    assertEquals(
        List.of("1/4 in longer than last read on the strap."),
        of(
            "{'kind':'reading','key':'odd','body':{'height':'strap','steering':'straight',"
                + "'quantity':'strap-length','result':'number','length':'9 in',"
                + "'doubt':'far off the last one'}}",
            strap("20 1/4 in")));
  }

  @Test
  void a_ring_read_before_the_shocks_length_moved_tells_no_place_any_more() {
    String ring = telltale("'what':'shock-ring','length':'5 in','shockLength':'22 in'");
    // 22 − 5 = 17 in: full bump, where the stop is solid, 5 in above ride and 1 below the ground.
    // The ring's tape and the shock's: each to 1/16 in, placed to 1/32, an inch of shock for one.
    assertEquals(
        "Deepest bump: +5 in from ride ± 1/8 in."
            + " About as far as where the stop is solid: 0 in ± 1/8 in."
            + " 1 in ± 1/8 in short of the limit of bump, frame to ground.",
        of(ring).get(0));
    assertEquals(
        List.of("Read before hit or bent: where it was is not told any more."),
        of(ring, "{'kind':'happening','body':{'corner':'lr','what':'hit-or-bent'}}"));
    assertEquals(of(ring), of(ring, adjust("strap", "hole 4")));
    assertEquals(
        List.of(
            "Where the wheel was is not known: needs how far the ring sits from the shock's body."),
        of(telltale("'what':'shock-ring','typed':'gone'")));
    assertEquals(
        List.of(
            "Where the wheel was is not known: needs the shock's length eye to eye as the ring was"
                + " read."),
        of(telltale("'what':'shock-ring','length':'5 in'")));
  }

  @Test
  void clay_says_how_far_its_gap_came_down_and_without_a_place_that_it_has_none() {
    String clay = "'what':'clay','point':'arm','length':'%s'";
    assertEquals(
        List.of(
            "The gap came down to that on the drive: 1/8 in less than its rule asks.",
            "The gap came down to that on the drive: 1/8 in more than its rule asks.",
            "It has no wheel position: a ring on the shock shaft has one."),
        of(
            telltale(clay.formatted("1/8 in")),
            telltale(clay.formatted("3/8 in")),
            telltale("'what':'clay','length':'3/8 in'")));
  }
}
