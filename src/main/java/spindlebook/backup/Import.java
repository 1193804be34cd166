package spindlebook.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import spindlebook.definition.CarDetails;
import spindlebook.fold.CarBook;
import spindlebook.log.Book;
import spindlebook.log.BookFile;
import spindlebook.log.CarsOfFile;
import spindlebook.log.WholeFile;

/**
 * Takes another book, or one car of it, into this one: every entry whose key is not here yet, each
 * with where it stood before, and the photos they name. Twice is harmless. Where no book was begun,
 * or nothing written, the whole other book comes as it is, byte for byte.
 */
final class Import {
  private Import() {}

  /**
   * @param car key or name of the one car to take; null for all of the book
   * @throws BackupRefused when what it comes from cannot be used, or has no such car
   * @throws spindlebook.log.BookRefused when that is damaged, or a program has this book open
   */
  static void run(Path data, Path from, String car, Clock clock, Consumer<String> tell) {
    if (car == null && nothingIn(data)) {
      Restore.run(data, from, clock.instant(), tell);
      return;
    }
    try (Source source = Source.open(from, null)) {
      BookFile.Contents other = BookFile.read(source.book());
      BookFile.Contents wanted = car == null ? other : other.ofCar(key(other, car));
      NamedPhotos named = new NamedPhotos();
      wanted.entries().forEach(named);
      try (Book book = Book.open(data, clock, tell)) {
        int photos = photos(data, source, named);
        long before = book.lastN();
        book.bringIn(wanted);
        long fresh = book.lastN() - before;
        tell.accept(
            String.format(
                "Brought in %s and %s; %s were here already.",
                Backup.entries(fresh),
                Backup.many(photos, "photo"),
                Backup.entries(wanted.entries().size() - fresh)));
      }
    } catch (IOException trouble) {
      throw BackupRefused.disk(data, trouble);
    }
  }

  private static boolean nothingIn(Path data) {
    Path book = data.resolve(BookFile.NAME);
    return !Files.exists(book) || BookFile.chain(book, entry -> {}).whole().n() == 0;
  }

  private static String key(BookFile.Contents other, String car) {
    Map<String, CarBook> cars = CarsOfFile.of(other);
    List<String> found =
        cars.keySet().stream()
            .filter(key -> key.equals(car) || name(cars.get(key)).equals(car))
            .toList();
    if (found.size() != 1) {
      throw new BackupRefused(
          "%s '%s' in that book; it has %s.",
          found.isEmpty() ? "There is no car" : "More than one car is called",
          car,
          String.join(
              ", ", cars.keySet().stream().map(k -> k + " (" + name(cars.get(k)) + ")").toList()));
    }
    return found.get(0);
  }

  private static String name(CarBook car) {
    return car.details().map(CarDetails::name).orElse("");
  }

  /** Copies those that are whole there and not here; how many. */
  private static int photos(Path data, Source source, NamedPhotos named) throws IOException {
    Path here = data.resolve(NamedPhotos.FOLDER);
    WholeFile.folder(here);
    int copied = 0;
    for (String photo : named.hashes) {
      if (!NamedPhotos.good(here, photo) && NamedPhotos.good(source.photos(), photo)) {
        NamedPhotos.copy(source.photos(), here, photo);
        copied++;
      }
    }
    return copied;
  }
}
