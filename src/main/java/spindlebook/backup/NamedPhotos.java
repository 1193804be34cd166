package spindlebook.backup;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import spindlebook.log.Entry;
import spindlebook.log.Sha256;
import spindlebook.log.WholeFile;

/** The photos that a book names, each by the SHA-256 of its file. */
final class NamedPhotos implements Consumer<Entry> {
  static final String FOLDER = "photos";
  static final String SMALL = ".small.jpg";
  private static final Pattern SHA_256 = Pattern.compile("[0-9a-f]{64}");

  final Set<String> hashes = new TreeSet<>();

  @Override
  public void accept(Entry entry) {
    if (entry.kind().equals("photo")) {
      add(entry.body());
    } else if (entry.kind().equals("correction")) {
      add(entry.body().path("body"));
    }
  }

  private void add(JsonNode body) {
    String file = body.path("file").asText();
    if (SHA_256.matcher(file).matches()) {
      hashes.add(file);
    }
  }

  /** The photo itself in a folder of photos. */
  static Path full(Path folder, String hash) {
    return folder.resolve(hash + ".jpg");
  }

  /** Its small one, which nothing vouches for; where it is gone the photo itself stands in. */
  static Path small(Path folder, String hash) {
    return folder.resolve(hash + SMALL);
  }

  /** Copies a photo to another folder of photos, its small one where there is none yet. */
  static void copy(Path from, Path to, String hash) throws IOException {
    WholeFile.put(full(to, hash), Files.readAllBytes(full(from, hash)));
    Path small = small(from, hash);
    if (Files.isRegularFile(small) && !Files.exists(small(to, hash))) {
      WholeFile.put(small(to, hash), Files.readAllBytes(small));
    }
  }

  /** Whether a photo lies in a folder as it was taken. */
  static boolean good(Path folder, String hash) throws IOException {
    Path file = full(folder, hash);
    return Files.isRegularFile(file) && Sha256.hex(file).equals(hash);
  }
}
