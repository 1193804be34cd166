package spindlebook.backup;

import java.io.IOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.ProviderNotFoundException;
import java.util.Set;
import spindlebook.log.BookFile;

/**
 * What a book is put back from, read and found whole: a copy in a place, a place, a folder with a
 * book in it, or a downloaded zip.
 *
 * @param photos the folder its photos lie in
 * @param named the photos the book names
 * @param zip open as long as this is; null when it is none
 */
record Source(Path book, Path photos, BookFile.Chain chain, Set<String> named, FileSystem zip)
    implements AutoCloseable {
  /**
   * Opens one.
   *
   * @param here the id of the book that is to be replaced, null if that is not known: a place may
   *     hold copies of more than one book
   * @throws BackupRefused when there is no book in it
   * @throws spindlebook.log.BookRefused when the book in it is damaged
   */
  static Source open(Path from, String here) {
    try {
      if (!Files.exists(from)) {
        throw new BackupRefused("There is no %s.", from);
      }
      if (Files.isDirectory(from.resolve(Place.BOOKS))) {
        return newest(new Place(from), here);
      }
      if (Files.isDirectory(from)) {
        return of(from.resolve(BookFile.NAME), from, null);
      }
      if (from.toString().endsWith(".jsonl")) {
        return of(from, photosOf(from), null);
      }
      FileSystem zip = FileSystems.newFileSystem(from);
      try {
        Path book = zip.getPath(BookFile.NAME);
        if (!Files.exists(book)) {
          throw BackupRefused.notOne(from, null);
        }
        return of(book, zip.getPath("/"), zip);
      } catch (RuntimeException refused) {
        zip.close();
        throw refused;
      }
    } catch (IOException | ProviderNotFoundException trouble) {
      throw BackupRefused.notOne(from, trouble);
    }
  }

  private static Source newest(Place place, String here) throws IOException {
    Place.Good good = place.newestGood(here);
    if (good == null) {
      good = place.newestGood(null);
    }
    if (good == null) {
      throw new BackupRefused("%s holds no good copy of a book.", place.folder);
    }
    return new Source(good.copy().file(), place.photos(), good.chain(), good.photos(), null);
  }

  /** The folder around a copy's photos: a place keeps its books one folder deeper. */
  static Path photosOf(Path book) {
    Path beside = book.toAbsolutePath().getParent();
    boolean inPlace = beside.endsWith(Place.BOOKS) && beside.getParent() != null;
    return inPlace ? beside.getParent() : beside;
  }

  private static Source of(Path book, Path around, FileSystem zip) {
    if (!Files.isRegularFile(book)) {
      throw new BackupRefused("There is no book.jsonl in %s.", around);
    }
    NamedPhotos named = new NamedPhotos();
    BookFile.Chain chain = BookFile.chain(book, named).whole();
    BookCopy.of(book)
        .filter(copy -> !copy.is(chain))
        .ifPresent(
            copy -> {
              throw new BackupRefused("%s is not as it was made: take another copy.", book);
            });
    return new Source(book, around.resolve(NamedPhotos.FOLDER), chain, named.hashes, zip);
  }

  @Override
  public void close() throws IOException {
    if (zip != null) {
      zip.close();
    }
  }
}
