package spindlebook.log;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import spindlebook.entry.Content;

/**
 * A book as version 1 of every kind wrote it, never to be edited: whatever a later release changes,
 * it reads this as it was. A kind's next version gets a file of its own beside it.
 */
class OlderKindsTest {
  private static final Path BOOK = Path.of("src", "test", "resources", "kinds", "version-1.jsonl");

  @Test
  void every_kind_of_version_1_is_read_and_would_be_written_as_it_stands() throws IOException {
    Set<String> kinds = new TreeSet<>();
    for (Entry entry : BookFile.readByHand(BOOK).entries()) {
      Content content = Bodies.read(entry);
      assertFalse(content instanceof Content.Kept, entry.key());
      assertEquals(entry.body(), Json.read(Json.MAPPER.writeValueAsBytes(Bodies.write(content))));
      kinds.add(content.getClass().getSimpleName());
    }
    Set<String> all =
        Arrays.stream(Content.class.getPermittedSubclasses())
            .map(Class::getSimpleName)
            .filter(name -> !name.equals("Kept"))
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(all, kinds);
  }
}
