package spindlebook.linkage;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import spindlebook.entry.Joint;

/** Reads linkage.json; where it comes from stands beside it. */
public final class ReferenceLinkage {
  static final JsonNode ALL = read("linkage.json");
  public static final JsonNode G1 = ALL.get("cases").get(0);

  private ReferenceLinkage() {}

  static Joints g1() {
    return joints(G1.get("inputs"));
  }

  static JsonNode identity(String start) {
    return each(ALL.get("invariants"))
        .filter(i -> i.get("id").textValue().startsWith(start))
        .findFirst()
        .orElseThrow();
  }

  public static List<JsonNode> rows(JsonNode of) {
    return each(of.get("rows")).toList();
  }

  /** The rows of a list in another file. */
  static List<JsonNode> rows(String file, String list) {
    return each(read(file).get(list)).toList();
  }

  static Joints joints(JsonNode inputs) {
    Map<Joint, Vec> at = new EnumMap<>(Joint.class);
    for (Joint joint : Joint.values()) {
      if (inputs.has(joint.key)) {
        at.put(joint, point(inputs.get(joint.key)));
      }
    }
    return new Joints(
        inputs.get("side").intValue() > 0,
        at,
        Math.toRadians(inputs.get("toe_in_deg").doubleValue()),
        Math.toRadians(inputs.get("camber_deg").doubleValue()),
        inputs.get("loaded_radius").doubleValue());
  }

  public static Vec point(JsonNode xyz) {
    return new Vec(xyz.get(0).doubleValue(), xyz.get(1).doubleValue(), xyz.get(2).doubleValue());
  }

  static Stream<JsonNode> each(JsonNode array) {
    return StreamSupport.stream(array.spliterator(), false);
  }

  private static JsonNode read(String name) {
    try (InputStream in = ReferenceLinkage.class.getResourceAsStream("/reference/" + name)) {
      return new ObjectMapper().readTree(in);
    } catch (IOException e) {
      throw new IllegalStateException(name + " cannot be read", e);
    }
  }
}
