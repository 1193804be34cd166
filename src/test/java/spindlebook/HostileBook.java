package spindlebook;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import spindlebook.definition.Layout;
import spindlebook.fold.Noted;
import spindlebook.fold.RandomBook;
import spindlebook.log.Bodies;

/**
 * The entries of one car as somebody might write them by hand to break the book, seeded: plausible
 * ones, then bent: odd numbers, keys that lead to another thing or round in a ring, entries moved,
 * repeated, withdrawn or corrected into something else, fields gone or of another kind.
 */
final class HostileBook {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** As large, small and even as may be typed. */
  private static final double[] ODD_NUMBERS = {
    0, -0.0, 5e-324, 1e-300, 1e-9, -1e-9, 1, -1, 25.4, 99_999, -99_999, 100_000, -100_000, 500, 3.1
  };

  private static final List<String> LATER =
      List.of(
          "use {'car':'car','unit':'hours','amount':4}",
          "to-do {'car':'car','corner':'lf','words':'look'}",
          "to-do {'target':'h2','done':true}",
          "telltale {'corner':'lf','kind':'shaft-ring','length':'2 in'}",
          "fastener {'corner':'lf','adjuster':'tie-rod','said':'tight'}",
          "photo {'corner':'lf','file':'x','widthPx':1,'heightPx':1}",
          "correction {'target':'car','reason':'x'}",
          "correction {'target':'lf','reason':'x'}",
          "correction {'target':'h7','reason':'x'}",
          "answer {'target':'car','itIsSo':false}",
          "answer {'target':'lf','itIsSo':false}",
          "definition {'corner':'lf','heldBack':{'allowance':'strap-stretch','percent':1e300}}",
          "definition {'corner':'lf','given':{'dimension':'stop-crush','length':'0 in'}}",
          "sign-off {'car':'car','why':'x'}",
          "no-such-kind {'corner':'lf'}");

  final List<ObjectNode> entries = new ArrayList<>();
  private final Random random;
  private final String own;

  /**
   * @param readable whether each body says something by itself, so that all are folded
   */
  HostileBook(long seed, boolean readable) {
    random = new Random(seed);
    own = "b" + seed + "-";
    plausible(seed);
    for (int i = 1 + random.nextInt(12); i > 0; i--) {
      bend(readable);
    }
    if (readable) {
      entries.removeIf(e -> !says(e));
    }
  }

  private void plausible(long seed) {
    Set<String> keys = new HashSet<>();
    List<Noted> noted = new RandomBook(seed).entries(20 + random.nextInt(100));
    noted.forEach(e -> keys.add(e.key()));
    for (Noted e : noted) {
      add(e.key(), Bodies.kind(e.content()), (ObjectNode) Bodies.write(e.content()));
    }
    String layout =
        Layout.values()[random.nextInt(Layout.values().length)]
            .name()
            .toLowerCase(java.util.Locale.ROOT)
            .replace('_', '-');
    for (ObjectNode e : entries) {
      if (e.get("kind").asText().equals("corner")) {
        ((ObjectNode) e.get("body")).put("layout", layout);
      }
    }
    int n = 0;
    for (String later : LATER) {
      String key = "h" + ++n;
      keys.add(key);
      if (random.nextInt(3) == 0) {
        int space = later.indexOf(' ');
        add(key, later.substring(0, space), read(later.substring(space).replace('\'', '"')));
      }
    }
    entries.forEach(e -> rename(e, keys));
  }

  private void add(String key, String kind, ObjectNode body) {
    ObjectNode entry = JSON.createObjectNode().put("key", key).put("kind", kind);
    entry.set("body", body);
    entries.add(entry);
  }

  private static ObjectNode read(String json) {
    try {
      return (ObjectNode) JSON.readTree(json);
    } catch (java.io.IOException wrong) {
      throw new IllegalArgumentException(json, wrong);
    }
  }

  /** Each book's keys are its own, so that many stand in one log. */
  private void rename(JsonNode node, Set<String> keys) {
    if (node instanceof ObjectNode object) {
      for (String name : names(object)) {
        JsonNode child = object.get(name);
        boolean refers = child.isTextual() && keys.contains(child.asText());
        if (refers && !name.equals("kind")) {
          object.put(name, own + child.asText());
        } else {
          rename(child, keys);
        }
      }
    } else {
      node.forEach(child -> rename(child, keys));
    }
  }

  private void bend(boolean readable) {
    ObjectNode entry = any(entries);
    ObjectNode other = any(entries);
    switch (random.nextInt(readable ? 8 : 12)) {
      case 0, 1 -> number(entry.get("body"));
      case 2 -> refer(entry);
      case 3 -> {
        entries.remove(entry);
        entries.add(random.nextInt(entries.size() + 1), entry);
      }
      case 4 -> {
        for (int i = random.nextInt(6); i >= 0; i--) {
          entries.add(entry.deepCopy().put("key", own + "again-" + entries.size()));
        }
      }
      case 5, 6 -> correct(entry, other);
      case 7 -> same(entry, other);
      case 8 -> drop(entry);
      case 9 -> entry.put("kind", other.get("kind").asText());
      case 10 -> word(entry.get("body"));
      default -> entry.set("body", other.get("body").deepCopy());
    }
  }

  private void number(JsonNode node) {
    List<ObjectNode> holders = new ArrayList<>();
    holders(node, holders);
    for (ObjectNode holder : holders) {
      for (String name : names(holder)) {
        if (holder.get(name).isNumber() && random.nextInt(1 + holders.size()) < 2) {
          holder.put(name, ODD_NUMBERS[random.nextInt(ODD_NUMBERS.length)]);
        }
      }
    }
  }

  /** What one says of itself is said of the other: equal positions, equal gaps. */
  private static void same(ObjectNode entry, ObjectNode other) {
    ObjectNode body = (ObjectNode) entry.get("body");
    for (String name : List.of("spindle", "mark", "length", "height", "name")) {
      if (body.has(name) && other.get("body").has(name)) {
        body.set(name, other.get("body").get(name).deepCopy());
      }
    }
  }

  private void refer(ObjectNode entry) {
    ObjectNode body = (ObjectNode) entry.get("body");
    for (String name : List.of("height", "round", "corner", "car", "target", "markAsAt")) {
      if (body.has(name) && random.nextInt(3) == 0) {
        body.put(name, any(entries).get("key").asText());
      }
    }
  }

  private void correct(ObjectNode entry, ObjectNode other) {
    ObjectNode body =
        JSON.createObjectNode().put("target", entry.get("key").asText()).put("reason", "x");
    if (random.nextBoolean()) {
      body.put("kind", other.get("kind").asText());
      body.set("body", other.get("body").deepCopy());
    }
    add(own + "bent-" + entries.size(), "correction", body);
  }

  private void drop(ObjectNode entry) {
    List<ObjectNode> holders = new ArrayList<>();
    holders(entry.get("body"), holders);
    ObjectNode holder = any(holders);
    List<String> names = names(holder);
    if (!names.isEmpty()) {
      if (random.nextBoolean()) {
        holder.remove(any(names));
      } else {
        holder.putNull(any(names));
      }
    }
  }

  private void word(JsonNode body) {
    List<ObjectNode> holders = new ArrayList<>();
    holders(body, holders);
    ObjectNode holder = any(holders);
    for (String name : names(holder)) {
      if (holder.get(name).isTextual()) {
        holder.set(name, TextNode.valueOf(any(List.of("", "x", "\u0000", "1e308", "<b>", "١"))));
      }
    }
  }

  private static void holders(JsonNode node, List<ObjectNode> holders) {
    if (node instanceof ObjectNode object) {
      holders.add(object);
    }
    if (node instanceof ObjectNode || node instanceof ArrayNode) {
      node.forEach(child -> holders(child, holders));
    }
  }

  private static List<String> names(ObjectNode object) {
    List<String> names = new ArrayList<>();
    object.fieldNames().forEachRemaining(names::add);
    return names;
  }

  private static boolean says(ObjectNode entry) {
    try {
      Bodies.read(entry.get("kind").asText(), entry.get("body"));
      return true;
    } catch (spindlebook.log.BookRefused refused) {
      return false;
    }
  }

  private <T> T any(List<T> things) {
    return things.get(random.nextInt(things.size()));
  }

  /** The file of such a book. */
  String lines() {
    StringBuilder lines = new StringBuilder();
    entries.forEach(e -> lines.append(e).append('\n'));
    return lines.toString();
  }

  String key(String plain) {
    return own + plain;
  }
}
