package spindlebook.figures;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Collection;
import java.util.Optional;
import java.util.OptionalDouble;
import spindlebook.page.Posted;
import spindlebook.travel.WorkedOut;
import spindlebook.uncertainty.Figure;
import spindlebook.units.TypedLength;

/** An object of the figures, in the order in which it is put; what is not known is left out. */
final class Node {
  private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

  private final ObjectNode json = NODES.objectNode();

  ObjectNode json() {
    return json;
  }

  /**
   * @param value a figure with its U, a length in mm, an enum as its word, anything of JSON, or a
   *     collection of such; null and an empty one are left out
   */
  Node put(String name, Object value) {
    if (value instanceof OptionalDouble number) {
      number.ifPresent(n -> json.set(name, json(n)));
      return this;
    }
    Object known = value instanceof Optional<?> maybe ? maybe.orElse(null) : value;
    if (known != null) {
      json.set(name, json(known));
    }
    return this;
  }

  /** Null where nobody said. */
  Node said(String name, String text) {
    json.put(name, text);
    return this;
  }

  /** Of a part that fails it is said why, and it takes none of the rest with it. */
  Node part(Runnable part) {
    WorkedOut.part(part, why -> json.withArray("notWorkedOut").add(why));
    return this;
  }

  private static JsonNode json(Object value) {
    if (value instanceof Node node) {
      return node.json;
    }
    if (value instanceof Figure figure) {
      return NODES.objectNode().put("value", figure.value()).put("U", figure.U());
    }
    if (value instanceof TypedLength length) {
      return NODES.numberNode(length.mm());
    }
    if (value instanceof Collection<?> all) {
      ArrayNode array = NODES.arrayNode();
      all.forEach(one -> array.add(json(one)));
      return array;
    }
    if (value instanceof Enum<?> word) {
      return NODES.textNode(Posted.word(word));
    }
    if (value instanceof Boolean is) {
      return NODES.booleanNode(is);
    }
    if (value instanceof Double number) {
      return NODES.numberNode(number.doubleValue());
    }
    if (value instanceof Number number) {
      return NODES.numberNode(number.longValue());
    }
    return value instanceof JsonNode node ? node : NODES.textNode(value.toString());
  }
}
