package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.Iterator;
import java.util.Set;

/** An entry as one line of JSON, and back. What is wrong with a line is said in a few words. */
final class Line {
  private static final Set<String> FIELDS =
      Set.of(
          "n", "at", "claimed", "who", "device", "key", "kind", "v", "after", "forced", "prev",
          "origin", "body");

  private final JsonNode fields;

  private Line(JsonNode fields) throws IOException {
    if (!fields.isObject()) {
      throw new IOException("it is not a JSON object");
    }
    for (Iterator<String> names = fields.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!FIELDS.contains(name)) {
        throw new IOException(
            "it has a field '" + BookRefused.shown(name) + "', which no entry has");
      }
    }
    this.fields = fields;
  }

  static byte[] write(Entry entry) throws IOException {
    ObjectNode line = Json.MAPPER.createObjectNode();
    line.put("n", entry.n()).put("at", entry.at().toString());
    if (entry.claimed() != null) {
      line.put("claimed", entry.claimed().toString());
    }
    line.put("who", entry.who());
    if (entry.device() != null) {
      line.putObject("device").put("id", entry.device().id()).put("name", entry.device().name());
    }
    line.put("key", entry.key()).put("kind", entry.kind()).put("v", entry.v());
    line.put("after", entry.after()).put("forced", entry.forced()).put("prev", entry.prev());
    if (entry.origin() != null) {
      line.putObject("origin")
          .put("book", entry.origin().book())
          .put("n", entry.origin().n())
          .put("hash", entry.origin().hash());
    }
    line.set("body", entry.body());
    return Json.MAPPER.writeValueAsBytes(line);
  }

  static Entry read(byte[] bytes) throws IOException {
    return sealed(Json.read(bytes));
  }

  static Entry sealed(JsonNode json) throws IOException {
    Line line = new Line(json);
    return new Entry(
        line.whole("n"),
        line.time("at"),
        line.has("claimed") ? line.time("claimed") : null,
        line.text("who"),
        line.device(),
        line.text("key"),
        line.text("kind"),
        line.version(),
        line.whole("after"),
        line.whole("forced"),
        line.text("prev"),
        line.body(),
        line.origin());
  }

  /** A line written by hand: what only the book's writer knows may be left out. */
  static Entry byHand(JsonNode json, long n) throws IOException {
    Line line = new Line(json);
    if (line.has("prev")) {
      throw new IOException(
          "it has a 'prev', which the lines before it have not: leave it out in a book written by"
              + " hand");
    }
    if (line.has("n") && line.whole("n") != n) {
      throw new IOException(
          "its n is " + line.whole("n") + ", but it is entry " + n + " of this book");
    }
    long after = line.has("after") ? line.whole("after") : n - 1;
    if (after >= n) {
      throw new IOException("it claims to follow entry " + after + ", which does not come before");
    }
    String key = line.has("key") ? line.text("key") : "e" + n;
    if (!Draft.KEY.matcher(key).matches()) {
      throw new IOException("its key is not 1 to 80 letters, digits, dots, dashes or underscores");
    }
    return new Entry(
        n,
        line.has("at") ? line.time("at") : null,
        line.has("claimed") ? line.time("claimed") : null,
        line.has("who") ? line.text("who") : "not said",
        line.device(),
        key,
        line.text("kind"),
        line.has("v") ? line.version() : 1,
        after,
        0,
        null,
        line.body(),
        line.origin());
  }

  private boolean has(String name) {
    return fields.has(name);
  }

  private JsonNode body() throws IOException {
    JsonNode body = fields.path("body");
    if (!body.isObject()) {
      throw new IOException("its body is not a JSON object");
    }
    return body;
  }

  private Device device() throws IOException {
    if (!has("device")) {
      return null;
    }
    JsonNode device = fields.get("device");
    return new Device(text(device, "id", "device"), text(device, "name", "device"));
  }

  private Origin origin() throws IOException {
    if (!has("origin")) {
      return null;
    }
    JsonNode origin = fields.get("origin");
    return new Origin(
        text(origin, "book", "origin"),
        whole(origin, "n", "origin"),
        text(origin, "hash", "origin"));
  }

  private int version() throws IOException {
    long v = whole("v");
    if (v < 1 || v > Integer.MAX_VALUE) {
      throw new IOException("its v is not a version");
    }
    return (int) v;
  }

  private Instant time(String name) throws IOException {
    try {
      return Instant.parse(text(name));
    } catch (DateTimeParseException wrong) {
      throw new IOException("its '" + name + "' is not a time like 2031-05-04T16:20:00Z", wrong);
    }
  }

  private String text(String name) throws IOException {
    return text(fields, name, null);
  }

  private long whole(String name) throws IOException {
    return whole(fields, name, null);
  }

  private static String text(JsonNode from, String name, String within) throws IOException {
    JsonNode value = from.path(name);
    if (!value.isTextual() || value.textValue().isBlank()) {
      throw new IOException(missing(name, within));
    }
    return value.textValue();
  }

  private static long whole(JsonNode from, String name, String within) throws IOException {
    JsonNode value = from.path(name);
    if (!value.isIntegralNumber() || !value.canConvertToLong() || value.longValue() < 0) {
      throw new IOException(missing(name, within));
    }
    return value.longValue();
  }

  private static String missing(String name, String within) {
    String whose = within == null ? "it" : "its " + within;
    return whose + " has no usable '" + name + "'";
  }
}
