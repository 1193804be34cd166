package spindlebook.spring;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.stream.StreamSupport;

/** Reads the reference numbers; where they come from stands beside them. */
final class SpringReference {
  private SpringReference() {}

  static List<JsonNode> rows(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false).toList();
  }

  static double[] numbers(JsonNode array) {
    return rows(array).stream().mapToDouble(JsonNode::doubleValue).toArray();
  }

  static JsonNode read(String name) {
    try (InputStream in = SpringReference.class.getResourceAsStream("/reference/" + name)) {
      return new ObjectMapper().readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(name + " cannot be read", e);
    }
  }
}
