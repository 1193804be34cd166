package spindlebook.words;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import spindlebook.definition.Defined;
import spindlebook.entry.AlignmentWay;
import spindlebook.entry.Content;
import spindlebook.log.Bodies;

/** A kind of entry that is added cannot be forgotten where kinds are told apart. */
class EveryKindTest {
  private static final Set<Class<?>> ALL =
      new HashSet<>(Arrays.asList(Content.class.getPermittedSubclasses()));

  @Test
  void every_kind_is_told_in_words() {
    assertEquals(ALL, new HashSet<Class<?>>(EntryWords.kinds()));
  }

  @Test
  void every_kind_is_read_from_the_book_but_the_one_that_is_only_kept() {
    Set<Class<?>> read = new HashSet<>(Bodies.kinds());
    assertTrue(read.add(Content.Kept.class), "kept under its own name");
    assertEquals(ALL, read);
  }

  @Test
  void everything_that_is_defined_has_its_name_in_the_book() {
    assertEquals(
        new HashSet<>(Arrays.asList(Defined.class.getPermittedSubclasses())),
        new HashSet<Class<?>>(Defined.NAMES.values()));
    assertEquals(
        new HashSet<>(Arrays.asList(AlignmentWay.class.getPermittedSubclasses())),
        new HashSet<Class<?>>(AlignmentWay.NAMES.values()));
  }

  @Test
  void what_stays_for_good_is_among_them() {
    assertTrue(ALL.containsAll(Content.STAYS), Content.STAYS.toString());
  }
}
