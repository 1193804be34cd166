package spindlebook.drivecheck;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import spindlebook.advice.DriveCheck;
import spindlebook.advice.ThingFirst;
import spindlebook.advice.ThingFirst.Why;
import spindlebook.entry.Content;
import spindlebook.fold.CarBook;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;
import spindlebook.fold.ReadAgain;
import spindlebook.log.Bodies;
import spindlebook.travel.Limit;
import spindlebook.uncertainty.Outcome;

/** What holds of the check of any book: seeded books of readings, changes, corrections, answers. */
class DriveCheckOfAnyBookTest {
  private static final int BOOKS = 60;

  private static <T> List<T> all(DriveCheck check, String corner, Class<T> kind) {
    return check.things().stream()
        .filter(t -> corner.equals(t.corner()))
        .filter(kind::isInstance)
        .map(kind::cast)
        .toList();
  }

  @Test
  void nothing_short_undecided_stale_or_doubted_is_left_out_or_told_twice() {
    int[] told = new int[4];
    for (long seed = 1; seed <= BOOKS; seed++) {
      CarBook book = CarBook.of(new RandomBook(seed).entries(160));
      DriveCheck check = DriveCheck.of(book);
      assertEquals(check.things().size(), Set.copyOf(check.things()).size());
      List<Why> whys = check.things().stream().map(ThingFirst::why).toList();
      assertEquals(whys.stream().sorted().toList(), whys);
      for (DriveCheck.Checked at : check.corners()) {
        String key = at.card().corner();
        long limits =
            Stream.of(at.travel().droop(), at.travel().bump())
                .flatMap(e -> e.limits().stream())
                .filter(l -> l.outcome() == Outcome.SHORT || l.outcome() == Outcome.CANT_TELL)
                .count();
        boolean measured = !at.card().heights().isEmpty();
        List<Limit> found =
            Stream.concat(
                    all(check, key, ThingFirst.OfLimit.class).stream()
                        .map(ThingFirst.OfLimit::limit),
                    all(check, key, ThingFirst.NotReadFarEnough.class).stream()
                        .peek(t -> assertTrue(t.count() > 1))
                        .flatMap(t -> t.reach().limits().stream()))
                .toList();
        assertEquals(measured ? limits : 0, found.size());
        assertEquals(at.card().doubts().size(), all(check, key, ThingFirst.InDoubt.class).size());
        Set<Content.ToRead> asked =
            all(check, key, ThingFirst.Missing.class).stream()
                .flatMap(m -> m.needs().stream())
                .map(n -> n.toRead())
                .filter(t -> t != null)
                .collect(Collectors.toSet());
        for (ReadAgain again : at.card().readAgain()) {
          long times =
              all(check, key, ThingFirst.Again.class).stream()
                  .flatMap(a -> a.again().stream())
                  .filter(again::equals)
                  .count();
          assertEquals(asked.contains(again.toRead()) ? 0 : 1, times, again.toString());
          told[0]++;
        }
        told[1] += (int) limits;
        told[2] += at.card().doubts().size();
        assertFalse(check.meetsRules() && at.travel().outcome() != Outcome.CLEAR);
      }
      told[3] += CheckWords.of(book, check).size();
    }
    for (int n : told) {
      assertTrue(n > 20, "too few: " + n);
    }
  }

  @Test
  void a_copy_goes_through_the_book_unchanged_and_is_the_same_again_from_the_same_entries() {
    int changed = 0;
    int aligned = 0;
    for (long seed = 1; seed <= BOOKS; seed++) {
      List<Noted> entries = new RandomBook(seed).entries(160);
      CarBook then = CarBook.of(entries.subList(0, 120));
      Content.SignOff kept = SignOffCopy.of(then, DriveCheck.of(then), "0f".repeat(32), "why");
      Content back = Bodies.read("sign-off", Bodies.write(kept));
      assertEquals(kept, back);
      CarBook now = CarBook.of(entries);
      assertEquals(
          kept.corners(), SignOffCopy.corners(DriveCheck.of(now.asOf(kept.n()))), "seed " + seed);
      List<spindlebook.entry.SignedCorner> today = SignOffCopy.corners(DriveCheck.of(now));
      CopyChanges changes = CopyChanges.between(kept.corners(), today, kept.unit(), kept.unit());
      if (changes.none()) {
        assertEquals(
            kept.corners().stream().map(c -> c.outcome()).toList(),
            today.stream().map(c -> c.outcome()).toList());
      } else {
        assertNotEquals(kept.corners(), today);
        changed++;
      }
      aligned += changes.of(CopyChanges.Part.ALIGNMENT).isEmpty() ? 0 : 1;
    }
    assertTrue(changed > BOOKS / 2, "too few: " + changed);
    assertTrue(aligned > BOOKS / 2, "too few with alignment: " + aligned);
  }

  @Test
  void every_kind_of_thing_is_told_in_words() {
    assertEquals(
        Set.<Class<?>>of(ThingFirst.class.getPermittedSubclasses()),
        new HashSet<Class<?>>(CheckWords.kinds()));
  }
}
