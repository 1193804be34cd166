package spindlebook.backup;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;
import spindlebook.log.FolderLock;
import spindlebook.log.WholeFile;

/**
 * Puts a book back into its folder. Nothing is deleted: what it replaces goes to a folder of its
 * own beside. Whoever opens the book next finds no note of another generation, so it gets a new
 * one, and phones offer again what they sent since. Paired devices stay as they are.
 */
final class Restore {
  private static final long ROOM = 8 << 20;

  private final Path data;
  private final Source from;
  private final Consumer<String> tell;
  private final List<String> comingBack = new ArrayList<>();

  private Restore(Path data, Source from, Consumer<String> tell) {
    this.data = data;
    this.from = from;
    this.tell = tell;
  }

  /** Says what putting it back would do; nothing is changed, and a program may have it open. */
  static void tryOut(Path data, Path from, Consumer<String> tell) {
    try (Source source = Source.open(from, idIn(data))) {
      new Restore(data, source, tell).compare();
      tell.accept("Nothing was changed.");
    } catch (IOException | UncheckedIOException trouble) {
      throw BackupRefused.disk(data, trouble);
    }
  }

  /**
   * Puts it back.
   *
   * @throws BackupRefused when what it comes from cannot be used
   * @throws BookRefused when that is damaged, or a program has the book open
   */
  static void run(Path data, Path from, Instant at, Consumer<String> tell) {
    try (Source source = Source.open(from, idIn(data));
        FolderLock lock = FolderLock.take(data)) {
      Restore restore = new Restore(data, source, tell);
      restore.compare();
      restore.putBack(at);
    } catch (IOException | UncheckedIOException trouble) {
      throw BackupRefused.disk(data, trouble);
    }
  }

  private static String idIn(Path data) {
    try {
      return BookFile.id(data.resolve(BookFile.NAME));
    } catch (IOException | BookRefused none) {
      return null;
    }
  }

  private Path book() {
    return data.resolve(BookFile.NAME);
  }

  private Path photos() {
    return data.resolve(NamedPhotos.FOLDER);
  }

  /** Says what is here, what comes, what leaves the book and which photos come back. */
  private void compare() throws IOException {
    List<String> kinds = new ArrayList<>();
    BookFile.Chain here = here(kinds);
    tell.accept(
        String.format(
            "Comes back: %s with %s.",
            Backup.entries(from.chain().n()), Backup.many(from.named().size(), "photo")));
    if (here != null) {
      tell.accept(leaves(here, kinds));
    }
    int lacking = 0;
    for (String photo : from.named()) {
      if (!NamedPhotos.good(photos(), photo)) {
        if (NamedPhotos.good(from.photos(), photo)) {
          comingBack.add(photo);
        } else {
          lacking++;
        }
      }
    }
    tell.accept(
        String.format(
            "Photos: %s here, %d come back, %d missing or damaged in both.",
            from.named().size() - comingBack.size() - lacking, comingBack.size(), lacking));
  }

  /** How far the book here holds; null when there is nothing to be read. */
  private BookFile.Chain here(List<String> kinds) {
    if (!Files.exists(book())) {
      tell.accept("Here now: no book.");
      return null;
    }
    try {
      BookFile.Chain here = BookFile.chain(book(), entry -> kinds.add(entry.kind()));
      tell.accept(
          String.format("Here now: %s.", Backup.entries(here.n()))
              + (here.damage() == null ? "" : " " + here.damage()));
      return here;
    } catch (BookRefused unreadable) {
      tell.accept("Here now: " + unreadable.getMessage());
      return null;
    }
  }

  private String leaves(BookFile.Chain here, List<String> kinds) {
    int common = 0;
    while (common <= Math.min(here.n(), from.chain().n())
        && here.hashes().get(common).equals(from.chain().hashes().get(common))) {
      common++;
    }
    if (common == 0) {
      return "It is another book: all "
          + Backup.entries(here.n())
          + " here leave it. They stay in the folder beside.";
    }
    List<String> lost = kinds.subList(common - 1, kinds.size());
    if (lost.isEmpty()) {
      return "Nothing leaves the book.";
    }
    Map<String, Integer> counts = new TreeMap<>();
    lost.forEach(kind -> counts.merge(kind, 1, Integer::sum));
    return String.format(
        "%s after entry %d leave the book: %s. Phones offer again what they sent lately.",
        Backup.entries(lost.size()),
        common - 1,
        String.join(
            ", ", counts.entrySet().stream().map(c -> c.getValue() + " " + c.getKey()).toList()));
  }

  private void putBack(Instant at) throws IOException {
    long needed = 2 * from.chain().end() + ROOM;
    for (String photo : comingBack) {
      needed += Files.size(NamedPhotos.full(from.photos(), photo));
    }
    long left = data.toFile().getUsableSpace();
    if (left < needed) {
      throw new BackupRefused(
          "%s has too little room: %s left, %s needed. Nothing was changed.",
          data, Place.size(left), Place.size(needed));
    }
    Path aside = folderAside(at);
    Path part = aside.resolve("coming-back.part");
    BookFile.copy(from.book(), from.chain().end(), part);
    BookFile.Chain back = BookFile.chain(part, entry -> {}).whole();
    if (!back.hash().equals(from.chain().hash())) {
      throw new BackupRefused(
          "%s does not hold what was written to it: nothing was changed.", data);
    }
    photosBack(aside);
    setAside(aside);
    // From here on whichever of the two a start finds opens as a generation of its own.
    Files.move(part, book(), StandardCopyOption.ATOMIC_MOVE);
    WholeFile.forceFolder(data);
    tell.accept("Done. What it replaced is in " + aside + ".");
  }

  private Path folderAside(Instant at) throws IOException {
    String name = "replaced-" + BookCopy.time(at);
    Path aside = data.resolve(name);
    for (int i = 2; Files.exists(aside); i++) {
      aside = data.resolve(name + "-" + i);
    }
    WholeFile.folder(aside);
    return aside;
  }

  /** Photos that are missing or damaged; a damaged one goes aside. */
  private void photosBack(Path aside) throws IOException {
    if (!comingBack.isEmpty()) {
      WholeFile.folder(photos());
    }
    for (String photo : comingBack) {
      Path file = NamedPhotos.full(photos(), photo);
      if (Files.exists(file)) {
        WholeFile.folder(aside.resolve(NamedPhotos.FOLDER));
        Files.move(file, aside.resolve(NamedPhotos.FOLDER).resolve(file.getFileName()));
      }
      NamedPhotos.copy(from.photos(), photos(), photo);
    }
  }

  /** Keeps the book that is here, and takes away what the files beside it know of its end. */
  private void setAside(Path aside) throws IOException {
    if (Files.exists(book())) {
      // Copied and not moved, so that at no moment there is none.
      BookFile.copy(book(), Files.size(book()), aside.resolve(BookFile.NAME));
    }
    List<Path> beside = new ArrayList<>();
    for (String these : List.of("generation.json", "index.*")) {
      try (DirectoryStream<Path> files = Files.newDirectoryStream(data, these)) {
        files.forEach(beside::add);
      }
    }
    for (Path file : beside) {
      Files.move(file, aside.resolve(file.getFileName()));
    }
    WholeFile.forceFolder(aside);
    WholeFile.forceFolder(data);
  }
}
