package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;
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

  /** More than it needs, less than a sector. */
  private static final int LENGTH = 256;

  /** The generation of a book just opened, on the disk before anybody is told of it. */
  static Generation of(Path folder, LogFile log) throws IOException {
    Generation known = read(folder);
    boolean goesOn =
        known != null
            && !log.restored()
            && known.n <= log.lastN()
            && log.hashAt(known.n).equals(known.hash);
    String id = goesOn ? known.id : UUID.randomUUID().toString();
    Generation now = new Generation(id, log.lastN(), log.lastHash());
    // Also where nothing changed: what was read may so far be only in memory, or of other length.
    WholeFile.put(folder.resolve(FILE), now.bytes());
    return now;
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
   * it right. It is written over in its place, as long as before and within one sector of the disk:
   * a power cut leaves this note or the one before.
   */
  void note(Path folder, LogFile log) {
    try (FileChannel file = FileChannel.open(folder.resolve(FILE), StandardOpenOption.WRITE)) {
      file.write(ByteBuffer.wrap(new Generation(id, log.lastN(), log.lastHash()).bytes()), 0);
    } catch (IOException noted) {
      // The last one noted stands: it only sees a shorter part of the book put back.
    }
  }

  private byte[] bytes() throws IOException {
    byte[] said =
        Json.MAPPER.writeValueAsBytes(
            Json.MAPPER.createObjectNode().put("id", id).put("n", n).put("hash", hash));
    byte[] padded = Arrays.copyOf(said, Math.max(LENGTH, said.length));
    Arrays.fill(padded, said.length, padded.length, (byte) ' ');
    return padded;
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
      byte[] bytes = Files.readAllBytes(file);
      for (byte[] before = null; !Arrays.equals(before, bytes); ) {
        // Another program may just be writing it: what is read twice is no mixture.
        before = bytes;
        bytes = Files.readAllBytes(file);
      }
      JsonNode said = Json.read(bytes);
      String id = said.path("id").asText();
      long n = said.path("n").asLong(-1);
      return id.isEmpty() || n < 0 ? null : new Generation(id, n, said.path("hash").asText());
    } catch (IOException damaged) {
      return null;
    }
  }
}
