package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.UUID;

/**
 * The first line of a book.
 *
 * @param format version of the file's format
 * @param id made once, when the book is begun
 * @param made when it was begun; null in a book written by hand without a header
 */
public record Header(int format, String id, Instant made) {
  /** The newest format this program reads, and the one it writes. */
  static final int FORMAT = 1;

  static Header begun(Instant now) {
    return new Header(FORMAT, UUID.randomUUID().toString(), now);
  }

  byte[] line() throws IOException {
    return Json.MAPPER.writeValueAsBytes(
        Json.MAPPER
            .createObjectNode()
            .put("spindlebook", "book")
            .put("format", format)
            .put("id", id)
            .put("made", made.toString()));
  }

  static boolean looksLikeOne(JsonNode line) {
    return line.isObject() && line.has("spindlebook");
  }

  static Header read(JsonNode line, String file) {
    if (!"book".equals(line.path("spindlebook").textValue())
        || !line.path("format").canConvertToInt()
        || !line.path("id").isTextual()) {
      throw BookRefused.book("The first line of %s is not the header of a book.", file);
    }
    int format = line.get("format").intValue();
    if (format > FORMAT) {
      throw BookRefused.book(
          "%s was written by a newer Spindlebook (format %d, this one reads up to %d): start the"
              + " newer version.",
          file, format, FORMAT);
    }
    try {
      String made = line.path("made").textValue();
      return new Header(
          format, line.get("id").textValue(), made == null ? null : Instant.parse(made));
    } catch (DateTimeParseException wrong) {
      throw BookRefused.book("The header of %s has a time that cannot be read.", file);
    }
  }
}
