package spindlebook.backup;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import spindlebook.log.BookFile;
import spindlebook.log.BookRefused;
import spindlebook.log.IndexCheck;

/** Looks a book through, and says in one sentence each what holds; nothing is written. */
final class Verify {
  /** A line that is just being written is no damage: it is looked at again. */
  private static final int TIMES = 5;

  private final Path book;
  private final Path folder;
  private final Consumer<String> tell;
  private boolean good = true;

  private Verify(Path book, Consumer<String> tell) {
    this.book = book;
    this.folder = book.toAbsolutePath().getParent();
    this.tell = tell;
  }

  /**
   * Looks through a book in its folder, or a copy of one.
   *
   * @param book its file, or the folder it lies in
   * @return whether all is good
   */
  static boolean of(Path book, Consumer<String> tell) {
    Path file = Files.isDirectory(book) ? book.resolve(BookFile.NAME) : book;
    try {
      Verify verify = new Verify(file, tell);
      verify.look();
      return verify.good;
    } catch (IOException trouble) {
      throw BackupRefused.disk(file, trouble);
    }
  }

  private void say(boolean holds, String sentence, Object... words) {
    good &= holds;
    tell.accept((holds ? "Good: " : "Wrong: ") + String.format(sentence, words));
  }

  private void look() throws IOException {
    // A copy knows of nobody else.
    boolean live = book.endsWith(BookFile.NAME);
    List<BookFile.End> ends = live ? BookFile.knownBeside(folder) : List.of();
    NamedPhotos photos = new NamedPhotos();
    BookFile.Chain chain = chain(photos);
    if (chain == null) {
      return;
    }
    photos(photos);
    if (live) {
      index(chain);
      for (BookFile.End end : ends) {
        say(
            chain.holds(end),
            "%s knows entry %d, and the book %s it.",
            end.by(),
            end.n(),
            chain.holds(end) ? "holds" : "lacks");
      }
      lastBackup(chain);
    }
  }

  /** Null when there is nothing that could be looked at. */
  private BookFile.Chain chain(NamedPhotos photos) {
    try {
      BookFile.Chain chain = BookFile.chain(book, photos);
      for (int i = 1; i < TIMES && chain.torn(); i++) {
        chain = BookFile.chain(book, photos);
      }
      BookFile.Chain found = chain;
      boolean asMade = BookCopy.of(book).map(copy -> copy.is(found)).orElse(true);
      if (chain.damage() != null) {
        say(false, "%s Up to entry %d the chain holds.", chain.damage(), chain.n());
      } else if (!asMade) {
        say(false, "the copy ends otherwise than when it was made, at entry %d.", chain.n());
      } else {
        say(true, "the chain holds, from the first to the last of %s.", Backup.entries(chain.n()));
      }
      return chain;
    } catch (BookRefused unreadable) {
      say(false, "%s", unreadable.getMessage());
      return null;
    }
  }

  private void photos(NamedPhotos named) throws IOException {
    Path photos = Source.photosOf(book).resolve(NamedPhotos.FOLDER);
    int missing = 0;
    int damaged = 0;
    for (String photo : named.hashes) {
      if (!Files.exists(NamedPhotos.full(photos, photo))) {
        missing++;
      } else if (!NamedPhotos.good(photos, photo)) {
        damaged++;
      }
    }
    if (missing + damaged == 0) {
      say(true, "%s, each as it was taken.", Backup.many(named.hashes.size(), "photo"));
    } else {
      say(
          false,
          "of %s %d missing and %d damaged.",
          Backup.many(named.hashes.size(), "photo"),
          missing,
          damaged);
    }
  }

  private void index(BookFile.Chain chain) throws IOException {
    if (!IndexCheck.closed(folder)) {
      tell.accept("Not looked at: no index that is closed; a start builds it from the book.");
    } else if (chain.damage() != null) {
      tell.accept("Not looked at: the index, as the book is damaged.");
    } else {
      String wrong = IndexCheck.wrong(folder);
      say(
          wrong == null,
          wrong == null
              ? "the index says what the book says."
              : "the index is not the book's: " + wrong + "; a start builds it anew.");
    }
  }

  private void lastBackup(BookFile.Chain chain) throws IOException {
    List<BookCopy> copies = Place.beside(folder).copies(chain.header().id());
    if (copies.isEmpty()) {
      tell.accept("Not looked at: no backup beside the book.");
      return;
    }
    BookCopy last = copies.get(copies.size() - 1);
    boolean holds =
        last.n() <= chain.n() && chain.hashes().get((int) last.n()).startsWith(last.hash());
    say(
        holds,
        "the last backup, of %s, ends at entry %d, and the book %s it.",
        BookCopy.time(last.at()),
        last.n(),
        holds ? "holds" : "lacks");
  }
}
