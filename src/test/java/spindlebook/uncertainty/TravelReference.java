package spindlebook.uncertainty;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** Reads the reference numbers; where they come from stands beside them. */
public final class TravelReference {
  private TravelReference() {}

  public static JsonNode travel() {
    return read("travel.json");
  }

  public static JsonNode strapLengths() {
    return read("strap_lengths.json").get("rows");
  }

  public static JsonNode cornerCurves() {
    return read("corner_curves.json");
  }

  public static Stream<JsonNode> each(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false);
  }

  public static double[] numbers(JsonNode array) {
    return each(array).mapToDouble(JsonNode::doubleValue).toArray();
  }

  private static JsonNode read(String name) {
    try (InputStream in = TravelReference.class.getResourceAsStream("/reference/" + name)) {
      return new ObjectMapper().readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(name + " cannot be read", e);
    }
  }
}
