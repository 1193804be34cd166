package spindlebook.alignment;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.apache.commons.math3.geometry.euclidean.threed.Vector3D;
import spindlebook.uncertainty.Figure;

/** Reads the reference numbers; where they come from stands beside them. */
public final class Reference {
  private Reference() {}

  public static JsonNode alignment() {
    return read("alignment.json");
  }

  static JsonNode bumpSteer() {
    return read("bump_steer.json");
  }

  public static List<JsonNode> rows(JsonNode array) {
    return each(array).toList();
  }

  static double[] numbers(JsonNode array) {
    return each(array).mapToDouble(JsonNode::doubleValue).toArray();
  }

  public static double rad(JsonNode row, String degrees) {
    return Math.toRadians(row.get(degrees).doubleValue());
  }

  public static Figure exactRad(JsonNode row, String degrees) {
    return Figure.exact(rad(row, degrees));
  }

  public static Vector3D point(JsonNode array) {
    return new Vector3D(numbers(array));
  }

  private static Stream<JsonNode> each(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false);
  }

  private static JsonNode read(String name) {
    try (InputStream in = Reference.class.getResourceAsStream("/reference/" + name)) {
      return new ObjectMapper().readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(name + " cannot be read", e);
    }
  }
}
