package spindlebook.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;
import spindlebook.log.WholeFile;

/**
 * A folder that holds backups: on the book's own disk, on a stick, on a NAS. Only one thread may
 * use it; two programs may, for what one of them begins has a name of its own until it is whole.
 */
class Place {
  static final String BOOKS = "books";

  private static final long MEGABYTE = 1 << 20;
  private static final long LEFT_FOR_THE_BOOK = 256 * MEGABYTE;
  private static final long LEFT_FOR_OTHERS = 8 * MEGABYTE;
  private static final Duration ABANDONED = Duration.ofDays(1);

  final Path folder;
  private final long leaves;
  private final Set<String> looked = new HashSet<>();

  private Place(Path folder, long leaves) {
    this.folder = folder;
    this.leaves = leaves;
  }

  Place(Path folder) {
    this(folder, LEFT_FOR_OTHERS);
  }

  /** The one beside a book; it must not take the room that the book itself needs. */
  static Place beside(Path book) {
    return new Place(book.resolve("backups"), LEFT_FOR_THE_BOOK);
  }

  boolean isBeside(Path book) {
    return folder.equals(beside(book).folder);
  }

  Path books() {
    return folder.resolve(BOOKS);
  }

  Path photos() {
    return folder.resolve(NamedPhotos.FOLDER);
  }

  /** Makes what is missing of it, and takes away what was begun there and never ended. */
  void make() throws IOException {
    for (Path made : List.of(folder, books(), photos())) {
      WholeFile.folder(made);
    }
    Instant longAgo = Instant.now().minus(ABANDONED);
    try (Stream<Path> files = Stream.concat(Files.list(books()), Files.list(photos()))) {
      for (Path file : files.filter(f -> f.toString().matches(".*\\.(part|new)")).toList()) {
        if (Files.getLastModifiedTime(file).toInstant().isBefore(longAgo)) {
          Files.deleteIfExists(file);
        }
      }
    }
  }

  /** The copies of one book, the oldest first; those of other books are nobody's business. */
  List<BookCopy> copies(String book) throws IOException {
    if (!Files.isDirectory(books())) {
      return List.of();
    }
    try (Stream<Path> files = Files.list(books())) {
      return files
          .flatMap(file -> BookCopy.of(file).stream())
          .filter(copy -> book == null || book.equals(id(copy)))
          .sorted(Comparator.comparing(BookCopy::at).thenComparing(BookCopy::file))
          .toList();
    }
  }

  private static String id(BookCopy copy) {
    try {
      return BookFile.id(copy.file());
    } catch (IOException | BookRefused damaged) {
      return null;
    }
  }

  /** A copy that was opened and found whole, and the photos it names. */
  record Good(BookCopy copy, BookFile.Chain chain, Set<String> photos) {}

  /** Null when it is not as it was made. */
  static Good good(BookCopy copy) {
    NamedPhotos photos = new NamedPhotos();
    try {
      BookFile.Chain chain = BookFile.chain(copy.file(), photos);
      return copy.is(chain) ? new Good(copy, chain, photos.hashes) : null;
    } catch (BookRefused unreadable) {
      return null;
    }
  }

  /** The newest good copy of a book, of any book for null; null when there is none. */
  Good newestGood(String book) throws IOException {
    List<BookCopy> copies = new ArrayList<>(copies(book));
    for (int i = copies.size() - 1; i >= 0; i--) {
      Good good = good(copies.get(i));
      if (good != null) {
        return good;
      }
    }
    return null;
  }

  /** Whether a photo is in it and was found whole, now or since {@link #lookAgain}. */
  boolean has(String photo) throws IOException {
    Path file = NamedPhotos.full(photos(), photo);
    if (!Files.isRegularFile(file)) {
      return false;
    }
    BasicFileAttributes now = Files.readAttributes(file, BasicFileAttributes.class);
    String asItIs = photo + " " + now.size() + " " + now.lastModifiedTime();
    if (looked.contains(asItIs)) {
      return true;
    }
    return NamedPhotos.good(photos(), photo) && looked.add(asItIs);
  }

  /** From here on every photo is read through once more. */
  void lookAgain() {
    looked.clear();
  }

  /** Bytes that are left on its disk. */
  long left() {
    return folder.toFile().getUsableSpace();
  }

  /** Bytes that its files take. */
  long used() throws IOException {
    long used = 0;
    for (Path part : List.of(books(), photos())) {
      try (Stream<Path> files = Files.isDirectory(part) ? Files.list(part) : Stream.empty()) {
        for (Path file : files.toList()) {
          used += Files.exists(file) ? Files.size(file) : 0;
        }
      }
    }
    return used;
  }

  /** Refuses what would fill its disk. */
  void needs(long bytes) {
    if (left() < bytes + leaves) {
      throw new BackupRefused(
          "%s has too little room: %s left. Make room there; the copies it has stay.",
          folder, size(left()));
    }
  }

  /** As people read it: 340 kB, 12 MB, 3.4 GB. */
  static String size(long bytes) {
    if (bytes < MEGABYTE) {
      return (bytes + 1023) / 1024 + " kB";
    }
    return bytes < 1024 * MEGABYTE
        ? bytes / MEGABYTE + " MB"
        : String.format(Locale.ROOT, "%.1f GB", bytes / (1024.0 * MEGABYTE));
  }
}
