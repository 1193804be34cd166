package spindlebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import spindlebook.log.Book;
import spindlebook.log.BookFile;
import spindlebook.log.Draft;
import spindlebook.log.Entry;

/** A book as years of use make it: the demo's season again and again on one car. */
final class SeasonsBook {
  private final List<Entry> season;
  private final Set<String> keys = new HashSet<>();

  SeasonsBook(Path empty) throws IOException {
    Files.createDirectories(empty);
    DemoCar.play(empty, Clock.systemUTC(), told -> {}, () -> false);
    season = BookFile.read(empty.resolve("book.jsonl")).entries();
    season.stream()
        .filter(e -> !e.kind().equals("car") && !e.kind().equals("corner"))
        .forEach(e -> keys.add(e.key()));
  }

  /** Writes a book of at least so many entries; how many it has. */
  long write(Path folder, int entries) throws IOException {
    Files.createDirectories(folder);
    try (Book book = Book.open(folder, Clock.systemUTC(), told -> {})) {
      for (int again = 0; book.lastN() < entries; again++) {
        List<Draft> drafts = new ArrayList<>();
        for (Entry e : season) {
          boolean once =
              e.kind().equals("car") || e.kind().equals("corner") || e.kind().equals("sign-off");
          if (!once || again == 0) {
            drafts.add(
                new Draft(
                    again == 0 ? e.key() : named(e.key(), again),
                    e.kind(),
                    e.v(),
                    book.lastN() + drafts.size(),
                    e.who(),
                    null,
                    null,
                    (ObjectNode) (again == 0 ? e.body() : renamed(e.body(), again))));
          }
        }
        book.append(drafts.subList(0, (int) Math.min(drafts.size(), entries - book.lastN())));
      }
      return book.lastN();
    }
  }

  private String named(String key, int again) {
    return keys.contains(key) ? key + "." + again : key;
  }

  /** The same body, hanging on the season's own entries. */
  private JsonNode renamed(JsonNode node, int again) {
    if (node.isTextual()) {
      return TextNode.valueOf(named(node.textValue(), again));
    }
    if (node instanceof ObjectNode object) {
      ObjectNode copy = object.objectNode();
      object.fields().forEachRemaining(f -> copy.set(f.getKey(), renamed(f.getValue(), again)));
      return copy;
    }
    if (node instanceof ArrayNode array) {
      ArrayNode copy = array.arrayNode();
      array.forEach(n -> copy.add(renamed(n, again)));
      return copy;
    }
    return node;
  }
}
