package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Left beside the index when it was closed in order, gone while it is open: {@code index.clean}.
 *
 * <p>It is no row of the index, because an index that was not closed in order is the last one to
 * ask whether it was.
 *
 * @param n position of the last entry the index holds
 * @param hash hash of that entry's line
 * @param sha256 of the index's file
 */
record CleanMark(long n, String hash, String sha256) {
  static final String FILE = "index.clean";

  void leave(Path folder) throws IOException {
    byte[] line =
        Json.MAPPER.writeValueAsBytes(
            Json.MAPPER.createObjectNode().put("n", n).put("hash", hash).put("sha256", sha256));
    WholeFile.put(folder.resolve(FILE), line);
  }

  /** Takes the mark away, so that whatever happens next it is not there by mistake. */
  static Optional<CleanMark> pickUp(Path folder) throws IOException {
    Optional<CleanMark> mark = read(folder);
    if (Files.deleteIfExists(folder.resolve(FILE))) {
      WholeFile.forceFolder(folder);
    }
    return mark;
  }

  /** Empty when there is none, or none that can be read. */
  static Optional<CleanMark> read(Path folder) throws IOException {
    Path file = folder.resolve(FILE);
    return Files.exists(file) ? read(Files.readAllBytes(file)) : Optional.empty();
  }

  private static Optional<CleanMark> read(byte[] line) {
    try {
      JsonNode mark = Json.read(line);
      return Optional.of(
          new CleanMark(
              mark.path("n").asLong(-1), mark.path("hash").asText(), mark.path("sha256").asText()));
    } catch (IOException damaged) {
      return Optional.empty();
    }
  }
}
