package spindlebook.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import spindlebook.log.BookFile;
import spindlebook.log.Sha256;

/** The book and its photos as one file, written as it is sent: nothing waits for all of it. */
final class BookZip {
  private static final String READ_ME =
      """
      This is a whole copy of a Spindlebook: its book.jsonl and its photos.

      To put it back: stop Spindlebook, then run restore with this file.
      Without that: copy book.jsonl and photos into the data folder.
      """;

  private final Path data;
  private final BookFile.Extent extent;
  private final NamedPhotos named = new NamedPhotos();

  /**
   * Checks the book first: once something is sent it is too late to say no.
   *
   * @throws spindlebook.log.BookRefused when the book is damaged
   */
  BookZip(Path data, BookFile.Extent extent) {
    this.data = data;
    this.extent = extent;
    BookFile.Chain chain = BookFile.chain(data.resolve(BookFile.NAME), named);
    if (!chain.holds(new BookFile.End("", extent.n(), extent.hash()))) {
      chain.whole();
      throw new BackupRefused("The file of the book was changed by somebody else.");
    }
  }

  void write(OutputStream to) throws IOException {
    ZipOutputStream zip = new ZipOutputStream(to);
    zip.putNextEntry(new ZipEntry(BookFile.NAME));
    try (InputStream book = Files.newInputStream(data.resolve(BookFile.NAME))) {
      byte[] part = new byte[1 << 16];
      for (long left = extent.bytes(); left > 0; ) {
        int got = book.readNBytes(part, 0, (int) Math.min(part.length, left));
        if (got == 0) {
          throw new IOException("the book became shorter");
        }
        zip.write(part, 0, got);
        left -= got;
      }
    }
    zip.setLevel(Deflater.NO_COMPRESSION);
    List<String> missing = new ArrayList<>();
    for (String photo : named.hashes) {
      byte[] picture = picture(photo);
      if (picture == null) {
        missing.add(photo);
      } else {
        put(zip, NamedPhotos.FOLDER + "/" + photo + ".jpg", picture);
      }
    }
    String lacking = missing.isEmpty() ? "" : "\nPhotos that are missing or damaged:\n";
    String readMe = READ_ME + lacking + String.join("\n", missing);
    put(zip, "read-me.txt", readMe.getBytes(StandardCharsets.UTF_8));
    zip.finish();
  }

  private static void put(ZipOutputStream zip, String name, byte[] bytes) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    zip.write(bytes);
    zip.closeEntry();
  }

  /** A photo as it was taken, from beside the book or from the backups there; null when lost. */
  private byte[] picture(String photo) throws IOException {
    for (Path folder : List.of(data.resolve(NamedPhotos.FOLDER), Place.beside(data).photos())) {
      Path file = NamedPhotos.full(folder, photo);
      byte[] bytes = Files.isRegularFile(file) ? Files.readAllBytes(file) : new byte[0];
      if (Sha256.hex(bytes).equals(photo)) {
        return bytes;
      }
    }
    return null;
  }
}
