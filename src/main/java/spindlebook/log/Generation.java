package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.UUID;

/**
 * Which life of the book this is: {@code generation.json} beside it. A book put back from an older
 * copy lacks entries that were acknowledged once; it then is a new generation, and phones that see
 * its new id offer again what they sent lately.
 *
 * @param id made anew whenever the book no longer holds the last entry known here
 * @param n position of that entry
 * @param hash hash of its line
 */
record Generation(String id, long n, String hash) {
  static final String FILE = "generation.json";

  /** The generation of a book just opened, on the disk before anybody is told of it. */
  static Generation of(Path folder, LogFile log) throws IOException {
    Generation known = read(folder);
    boolean goesOn =
        known != null
            && !log.restored()
            && known.n <= log.lastN()
            && log.hashAt(known.n).equals(known.hash);
    Generation now = goesOn ? known : new Generation(UUID.randomUUID().toString(), 0, "");
    return now.leave(folder, log);
  }

  /** The same generation, as far as the book goes now. */
  Generation leave(Path folder, LogFile log) throws IOException {
    Generation now = new Generation(id, log.lastN(), log.lastHash());
    if (!now.equals(this)) {
      WholeFile.put(folder.resolve(FILE), now.bytes());
    }
    return now;
  }

  /**
   * Notes how far the book goes now without waiting for the disk: a program killed later has left
   * it right. A power cut may leave it behind, or unreadable and then a new generation.
   */
  void note(Path folder, LogFile log) {
    try {
      Path half = folder.resolve(FILE + ".new");
      Files.write(half, new Generation(id, log.lastN(), log.lastHash()).bytes());
      Files.move(half, folder.resolve(FILE), StandardCopyOption.ATOMIC_MOVE);
    } catch (IOException noted) {
      // The last one noted stands: it only sees a shorter part of the book put back.
    }
  }

  private byte[] bytes() throws IOException {
    return Json.MAPPER.writeValueAsBytes(
        Json.MAPPER.createObjectNode().put("id", id).put("n", n).put("hash", hash));
  }

  /**
   * Null when there is none, or none that can be read: what is sent twice is stored once anyway.
   */
  static Generation read(Path folder) throws IOException {
    Path file = folder.resolve(FILE);
    if (!Files.exists(file)) {
      return null;
    }
    try {
      JsonNode said = Json.read(Files.readAllBytes(file));
      String id = said.path("id").asText();
      long n = said.path("n").asLong(-1);
      return id.isEmpty() || n < 0 ? null : new Generation(id, n, said.path("hash").asText());
    } catch (IOException damaged) {
      return null;
    }
  }
}
