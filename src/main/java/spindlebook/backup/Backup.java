package spindlebook.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import spindlebook.log.BookFile;
import spindlebook.log.Sha256;
import spindlebook.log.WholeFile;

/**
 * What bringing one place up to a book came to.
 *
 * @param newest the copy that holds all of the book
 * @param fresh whether it was made just now; else nothing had changed since
 * @param photos how many it names
 * @param lacking how many of them are whole neither beside the book nor in the place
 */
record Backup(BookCopy newest, boolean fresh, int photos, int lacking) {
  /**
   * Copies what a place lacks of a book; a copy is opened and checked before it gets its name.
   *
   * @param data the folder of the book
   * @param now how far the book goes
   * @param progress gets a few words at every step; what it throws ends the work
   * @throws BackupRefused when there is no good copy of all of the book afterwards
   * @throws spindlebook.log.BookRefused when the book itself is damaged
   */
  static Backup of(
      Path data, BookFile.Extent now, Place place, Instant at, Consumer<String> progress) {
    try {
      place.make();
      progress.accept("Looking through the copies");
      Place.Good newest = place.newestGood(now.book());
      if (newest != null && newest.chain().hash().equals(now.hash())) {
        int lacking = copyPhotos(data, newest.photos(), place, progress);
        return new Backup(newest.copy(), false, newest.photos().size(), lacking);
      }
      return fresh(data, now, place, at, progress);
    } catch (IOException | UncheckedIOException trouble) {
      throw BackupRefused.disk(place.folder, trouble);
    }
  }

  private static Backup fresh(
      Path data, BookFile.Extent now, Place place, Instant at, Consumer<String> progress)
      throws IOException {
    Path part = place.books().resolve(UUID.randomUUID() + ".part");
    try {
      place.needs(now.bytes());
      progress.accept("Copying the book");
      BookFile.copy(data.resolve(BookFile.NAME), now.bytes(), part);
      progress.accept("Checking the copy");
      NamedPhotos photos = new NamedPhotos();
      BookFile.Chain chain = BookFile.chain(part, photos);
      if (chain.damage() != null || !chain.hash().equals(now.hash())) {
        // Either the book itself is damaged, and says so, or what was written does not come back.
        BookFile.chain(data.resolve(BookFile.NAME), entry -> {}).whole();
        throw new BackupRefused(
            "%s does not hold what was written to it: use another disk.", place.folder);
      }
      int lacking = copyPhotos(data, photos.hashes, place, progress);
      BookCopy copy = BookCopy.in(place.books(), after(place, now, at), now.n(), now.hash());
      Files.move(part, copy.file(), StandardCopyOption.ATOMIC_MOVE);
      WholeFile.forceFolder(place.books());
      thin(place, now.book());
      return new Backup(copy, true, photos.hashes.size(), lacking);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  /** The time in its name: later than every other copy's, however wrong the clock is. */
  private static Instant after(Place place, BookFile.Extent now, Instant at) throws IOException {
    Instant named = at.truncatedTo(ChronoUnit.SECONDS);
    for (BookCopy copy : place.copies(now.book())) {
      if (!copy.at().isBefore(named)) {
        named = copy.at().plusSeconds(1);
      }
    }
    return named;
  }

  /** Copies the photos that a place lacks, and says how many are whole nowhere. */
  private static int copyPhotos(
      Path data, Set<String> named, Place place, Consumer<String> progress) throws IOException {
    Path from = data.resolve(NamedPhotos.FOLDER);
    int lacking = 0;
    int seen = 0;
    for (String photo : named) {
      progress.accept("Photo " + ++seen + " of " + named.size());
      if (!place.has(photo) && !copyPhoto(from, photo, place)) {
        lacking++;
      }
      Path small = NamedPhotos.small(from, photo);
      Path kept = NamedPhotos.small(place.photos(), photo);
      if (Files.isRegularFile(small)
          && !(Files.exists(kept) && Files.size(kept) == Files.size(small))) {
        place.needs(Files.size(small));
        WholeFile.put(kept, Files.readAllBytes(small));
      }
    }
    return lacking;
  }

  /** False when it is not whole beside the book either. */
  private static boolean copyPhoto(Path from, String photo, Place place) throws IOException {
    Path file = NamedPhotos.full(from, photo);
    if (!Files.isRegularFile(file)) {
      return false;
    }
    byte[] bytes = Files.readAllBytes(file);
    if (!Sha256.hex(bytes).equals(photo)) {
      return false;
    }
    place.needs(bytes.length);
    WholeFile.put(NamedPhotos.full(place.photos(), photo), bytes);
    if (!place.has(photo)) {
      throw new BackupRefused(
          "%s does not hold what was written to it: use another disk.", place.folder);
    }
    return true;
  }

  /** Takes copies away that have become too many, each only if the one that stands for it opens. */
  private static void thin(Place place, String book) throws IOException {
    List<BookCopy> copies = place.copies(book);
    for (Map.Entry<BookCopy, BookCopy> goes : Thinning.mayGo(copies).entrySet()) {
      if (Place.good(goes.getValue()) != null) {
        Files.deleteIfExists(goes.getKey().file());
      }
    }
  }

  /** One sentence for the terminal. */
  String sentence() {
    return (fresh
            ? String.format("Copied to %s and checked", newest.file())
            : String.format("Nothing changed since %s, which is still good", newest.file()))
        + String.format(": %s, %s.", entries(newest.n()), many(photos, "photo"))
        + (lacking == 0
            ? ""
            : String.format(" %s missing or damaged beside the book.", are(lacking, "photo")));
  }

  static String entries(long n) {
    return n == 1 ? "1 entry" : n + " entries";
  }

  static String many(int count, String what) {
    return count + " " + what + (count == 1 ? "" : "s");
  }

  static String are(int count, String what) {
    return many(count, what) + (count == 1 ? " is" : " are");
  }
}
