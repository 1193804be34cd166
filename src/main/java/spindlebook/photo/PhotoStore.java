package spindlebook.photo;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import spindlebook.entry.Content;
import spindlebook.log.Bodies;
import spindlebook.log.Book;
import spindlebook.log.Sha256;
import spindlebook.log.WholeFile;
import spindlebook.page.FormKey;

/**
 * Photos beside the book, each named by the SHA-256 of its file, and the entries that name them.
 */
public final class PhotoStore {
  private static final Pattern NAME = Pattern.compile("[0-9a-f]{64}(\\.small)?\\.jpg");

  private final Book book;
  private final Path folder;

  /**
   * @param dataDir the folder of the book
   */
  public PhotoStore(Book book, Path dataDir) {
    this.book = book;
    this.folder = dataDir.resolve("photos");
  }

  /** A photo on the disk that no entry names yet. */
  record Kept(String file, int widthPx, int heightPx) {}

  /**
   * Puts a photo on the disk, for good, before anything names it. One at a time: what one takes of
   * memory is bounded, and the same photo twice is one file.
   */
  synchronized Kept keep(InputStream sent) throws IOException {
    WholeFile.folder(folder);
    sweep();
    Picture picture = Picture.of(sent, folder);
    String file = Sha256.hex(picture.jpeg());
    put(file + ".small.jpg", picture.small());
    put(file + ".jpg", picture.jpeg());
    return new Kept(file, picture.widthPx(), picture.heightPx());
  }

  /** What was on its way when the program was killed. */
  private void sweep() throws IOException {
    try (Stream<Path> left = Files.list(folder)) {
      for (Path file : left.filter(f -> f.toString().matches(".*\\.(part|new)")).toList()) {
        Files.deleteIfExists(file);
      }
    }
  }

  private void put(String name, byte[] bytes) throws IOException {
    if (Files.exists(folder.resolve(name))) {
      // Its name may not last yet, where the program was killed before it had waited for it.
      WholeFile.forceFolder(folder);
    } else {
      WholeFile.put(folder.resolve(name), bytes);
    }
  }

  void add(Content.Photo photo, FormKey form, String who) {
    book.append(Bodies.draft(form.key(), form.within(book.lastN()).after(), who, photo));
  }

  /**
   * A photo's file by its own name; empty when there is none, or it is no name of a photo. Where
   * the small one is gone the whole one stands in.
   */
  Optional<Path> file(String name) {
    return Stream.of(name, name.replace(".small.jpg", ".jpg"))
        .filter(n -> NAME.matcher(n).matches())
        .map(folder::resolve)
        .filter(Files::isRegularFile)
        .findFirst();
  }
}
