package spindlebook.backup;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Which copies stay, by hand on a calendar. */
class ThinningTest {
  private static List<BookCopy> copies(String... times) {
    return Stream.of(times)
        .map(t -> BookCopy.in(Path.of("books"), Instant.parse(t), 1, "0123456789abcdef"))
        .toList();
  }

  /** The times of those that stay. */
  private static List<String> stay(String... times) {
    List<BookCopy> copies = copies(times);
    Map<BookCopy, BookCopy> gone = Thinning.mayGo(copies);
    return copies.stream().filter(c -> !gone.containsKey(c)).map(c -> c.at().toString()).toList();
  }

  @Test
  void all_of_the_last_day_stay() {
    String[] day = {
      "2031-05-03T12:00:00Z", "2031-05-03T12:00:01Z", "2031-05-03T23:59:59Z", "2031-05-04T12:00:00Z"
    };
    assertEquals(List.of(day), stay(day));
  }

  @Test
  void then_the_last_one_of_each_day_for_a_month() {
    assertEquals(
        List.of("2031-04-20T23:00:00Z", "2031-05-01T09:00:00Z", "2031-05-04T12:00:00Z"),
        stay(
            "2031-04-20T01:00:00Z",
            "2031-04-20T23:00:00Z",
            "2031-05-01T08:00:00Z",
            "2031-05-01T09:00:00Z",
            "2031-05-04T12:00:00Z"));
  }

  @Test
  void then_the_last_one_of_each_week_for_a_year() {
    // 2031-03-03 is a Monday and 2031-03-09 its Sunday.
    assertEquals(
        List.of("2031-03-02T10:00:00Z", "2031-03-09T10:00:00Z", "2031-05-04T12:00:00Z"),
        stay(
            "2031-02-24T10:00:00Z",
            "2031-03-02T10:00:00Z",
            "2031-03-03T10:00:00Z",
            "2031-03-09T10:00:00Z",
            "2031-05-04T12:00:00Z"));
  }

  @Test
  void a_week_across_the_new_year_is_one_week() {
    // Monday 2030-12-30 to Sunday 2031-01-05 is the first week of 2031.
    assertEquals(
        List.of("2031-01-05T10:00:00Z", "2031-05-04T12:00:00Z"),
        stay("2030-12-30T10:00:00Z", "2031-01-05T10:00:00Z", "2031-05-04T12:00:00Z"));
  }

  @Test
  void then_the_last_one_of_each_month() {
    assertEquals(
        List.of("2029-01-31T10:00:00Z", "2029-02-20T10:00:00Z", "2031-05-04T12:00:00Z"),
        stay(
            "2029-01-01T10:00:00Z",
            "2029-01-31T10:00:00Z",
            "2029-02-01T10:00:00Z",
            "2029-02-20T10:00:00Z",
            "2031-05-04T12:00:00Z"));
  }

  @Test
  void one_copy_or_none_stays_as_it_is() {
    assertEquals(Map.of(), Thinning.mayGo(List.of()));
    assertEquals(Map.of(), Thinning.mayGo(copies("2031-05-04T12:00:00Z")));
  }

  @Test
  void three_years_of_four_copies_a_day_thinned_at_each_leave_some_hundred() {
    List<BookCopy> copies = new ArrayList<>();
    Instant from = Instant.parse("2028-05-04T12:00:00Z");
    Instant at = from;
    for (int hour = 0; hour < 3 * 365 * 24; hour += 6) {
      at = from.plus(Duration.ofHours(hour));
      copies.add(BookCopy.in(Path.of("books"), at, hour, "0123456789abcdef"));
      copies.removeAll(List.copyOf(Thinning.mayGo(copies).keySet()));
    }
    // By hand: 5 of the last day, about 30 days, 48 weeks beyond them, 24 months beyond the year.
    assertTrue(copies.size() > 95 && copies.size() < 115, "copies: " + copies.size());
    assertEquals(at, copies.get(copies.size() - 1).at());
    assertTrue(Duration.between(copies.get(0).at(), from).abs().toDays() < 31, "the first month's");
    for (int i = 1; i < copies.size(); i++) {
      Duration gap = Duration.between(copies.get(i - 1).at(), copies.get(i).at());
      assertTrue(gap.toDays() <= 62, () -> "a gap of " + gap);
    }
  }
}
