package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * The same key with another body, such as a form sent again after going back and typing otherwise:
 * kept under a key of its own, in doubt where its kind can be. The key comes from what was sent, so
 * that this too is stored once; what hangs on it in the same submission follows.
 */
final class OwnKey {
  /** Between the first entry's key and what tells the other body from it. */
  static final String OTHER = ".other-";

  private static final int LONGEST_FIRST = 60;
  private static final Set<String> CAN_BE_DOUBTED =
      Set.of("height", "reading", "adjustment", "alignment");

  /** What the book adds to what was sent, from what it knows by then. */
  private static final Map<String, List<String>> ADDED =
      Map.of(
          "height", List.of("doubt"),
          "reading", List.of("doubt", "result", "length", "angle", "go", "noGo"),
          "alignment", List.of("doubt"),
          "adjustment", List.of("doubt", "from"),
          "round", List.of("toRead", "tape", "gapTool", "angleTool"),
          "sign-off", List.of("n", "hash", "unit", "corners", "open"));

  private final Function<String, Entry> known;
  private final Map<String, String> moved = new HashMap<>();

  /** A car and its corners are one thing: null, or what tells this whole from the one known. */
  private final String whole;

  OwnKey(List<Draft> drafts, Function<String, Entry> known) {
    this.known = known;
    boolean car =
        !drafts.isEmpty()
            && drafts.get(0).origin() == null
            && drafts.get(0).kind().equals("car")
            && known.apply(drafts.get(0).key()) != null;
    boolean other =
        car && drafts.stream().anyMatch(d -> known.apply(d.key()) == null || another(d) != null);
    whole = other ? drafts.stream().map(d -> said(d.kind(), d.body())).toList().toString() : null;
  }

  /** The draft as it is to be written or found: under its own key, or under another. */
  Draft of(Draft sent) {
    Draft draft = sent;
    if (!moved.isEmpty()) {
      JsonNode body = sent.body().deepCopy();
      draft = follow(body) ? sent.as(sent.key(), body) : sent;
    }
    Entry first = another(draft);
    // Of a lone corner the first one holds: a car has one at each of its places.
    boolean lone = whole == null && draft.kind().equals("corner");
    if (lone || first == null && whole == null) {
      return draft;
    }
    String key = draft.key();
    String tells = whole == null ? draft.kind() + said(draft.kind(), draft.body()) : whole;
    String own =
        key.substring(0, Math.min(key.length(), LONGEST_FIRST))
            + OTHER
            + Sha256.hex((key + tells).getBytes(StandardCharsets.UTF_8)).substring(0, 10);
    moved.put(key, own);
    ObjectNode body = draft.body().deepCopy();
    if (first != null && CAN_BE_DOUBTED.contains(draft.kind())) {
      JsonNode typed = first.body().findValue("typed");
      body.put(
          "doubt",
          "Sent once more than entry "
              + first.n()
              + (typed == null ? "" : ", '" + typed.asText() + "'")
              + ", and differs: a correction of it?");
    }
    return draft.as(own, body);
  }

  /** The entry already under the draft's key, when that one says something else; else null. */
  private Entry another(Draft draft) {
    Entry entry = known.apply(draft.key());
    return entry == null
            || entry.kind().equals(draft.kind())
                && said(entry.kind(), entry.body()).equals(said(draft.kind(), draft.body()))
        ? null
        : entry;
  }

  private static String said(String kind, JsonNode body) {
    ObjectNode said = body.deepCopy();
    said.remove(ADDED.getOrDefault(kind, List.of()));
    return said.toString();
  }

  /** Names of entries that were moved, wherever a body names one; whether it named any. */
  private boolean follow(JsonNode body) {
    boolean named = false;
    if (body instanceof ObjectNode object) {
      for (Map.Entry<String, JsonNode> field : object.properties()) {
        String to = field.getValue().isTextual() ? moved.get(field.getValue().asText()) : null;
        if (to != null) {
          field.setValue(object.textNode(to));
        }
        named |= to != null || follow(field.getValue());
      }
    } else if (body instanceof ArrayNode array) {
      for (JsonNode item : array) {
        named |= follow(item);
      }
    }
    return named;
  }
}
