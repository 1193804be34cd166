package spindlebook.log;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;

/**
 * The book of one garage, open for reading and writing: the file, its writer and its index.
 *
 * <p>Any thread may use it. What {@link #append(List)} has returned is on the disk and in the
 * index.
 */
public final class Book implements AutoCloseable {
  private static final String MIGRATIONS = "classpath:db/migration";

  private final FolderLock lock;
  private final LogFile log;
  private final Index index;
  private final Belonging belonging;
  private final Writer writer;
  private final Path folder;
  private final Generation generation;
  private final AtomicBoolean closed = new AtomicBoolean();
  private volatile Supplier<Sender> sender = () -> Sender.ITSELF;

  private Book(
      FolderLock lock,
      LogFile log,
      Index index,
      Belonging belonging,
      Writer writer,
      Path folder,
      Generation generation) {
    this.folder = folder;
    this.generation = generation;
    this.lock = lock;
    this.log = log;
    this.index = index;
    this.belonging = belonging;
    this.writer = writer;
  }

  /**
   * Opens the book in a folder, and begins one if there is none.
   *
   * @param tell gets one sentence for everything the person at the terminal should know
   * @throws BookRefused if it cannot be opened; its file is then as it was
   */
  public static Book open(Path dataDir, Clock clock, Consumer<String> tell) {
    return open(dataDir, clock, OnceHeld.NOT_RESTORED, tell);
  }

  /**
   * Opens a book that may have been put back from an older copy.
   *
   * @param restored how many entries such a copy holds; negative if none was put back
   */
  public static Book open(Path dataDir, Clock clock, long restored, Consumer<String> tell) {
    return open(dataDir, clock, restored, false, tell, MIGRATIONS);
  }

  /** Throws the index of a book away and builds it anew; the book itself is only read. */
  public static void rebuild(Path dataDir, Clock clock, long restored, Consumer<String> tell) {
    open(dataDir, clock, restored, true, tell, MIGRATIONS).close();
  }

  static Book open(Path folder, Clock clock, Consumer<String> tell, String... migrations) {
    return open(folder, clock, OnceHeld.NOT_RESTORED, false, tell, migrations);
  }

  private static Book open(
      Path folder,
      Clock clock,
      long restored,
      boolean indexAnew,
      Consumer<String> tell,
      String... migrations) {
    FolderLock lock = FolderLock.take(folder);
    LogFile log = null;
    try {
      Belonging belonging = new Belonging();
      FirstLook look = new FirstLook();
      log =
          LogFile.open(
              folder,
              clock.instant(),
              OnceHeld.in(folder, restored),
              entry -> {
                belonging.add(entry);
                look.at(entry);
              },
              tell);
      look.sentences(clock.instant()).forEach(tell);
      LogFile opened = log;
      ownersOnly(folder);
      Generation generation = Generation.of(folder, log);
      if (indexAnew) {
        CleanMark.pickUp(folder);
      }
      Index index = Index.open(folder, log, belonging, tell, migrations);
      Writer writer = new Writer(log, index, clock, tell);
      writer.onAppended(entries -> generation.note(folder, opened));
      writer.start();
      return new Book(lock, log, index, belonging, writer, folder, generation);
    } catch (IOException trouble) {
      closeFiles(log, lock);
      throw BookRefused.book(
          trouble,
          "What %s once held cannot be read or written down there: %s.",
          folder,
          LogFile.said(trouble));
    } catch (RuntimeException refused) {
      closeFiles(log, lock);
      throw refused;
    }
  }

  /** Its own files and folders, also of an earlier release; the folder itself is its owner's. */
  private static void ownersOnly(Path folder) throws IOException {
    try (DirectoryStream<Path> own =
        Files.newDirectoryStream(
            folder, "{book.*,generation.json*,devices.json*,index.*,photos,backups,replaced-*}")) {
      own.forEach(WholeFile::ownersOnly);
    }
  }

  /**
   * Refuses, in words, when nothing would be taken or found now: asks the thread that writes, waits
   * for the disk with a small file beside the book, and asks the index. No entry is written.
   */
  public void check() {
    writer.append(List.of());
    try {
      Path beside = folder.resolve("check");
      WholeFile.put(beside, new byte[512]);
      Files.delete(beside);
    } catch (IOException trouble) {
      throw BookRefused.disk(
          trouble, "The disk of the book takes nothing: %s.", LogFile.said(trouble));
    }
    read(handle -> handle.createQuery("select n from meta").mapTo(Long.class).one());
  }

  /**
   * Puts a submission in the book, as a whole and without a gap, and waits until it is on the disk
   * and in the index.
   *
   * <p>A key that is in the book already is not written again; the answer then holds the entry that
   * was first.
   *
   * @return the entries as they stand in the book, in the order handed in
   * @throws BookRefused if it is not in the book; {@link BookRefused#why()} tells whether the same
   *     drafts may be handed in again later
   */
  public List<Entry> append(List<Draft> drafts) {
    Sender from = sender.get();
    if (!from.keeps()) {
      throw BookRefused.looks();
    }
    return writer.append(drafts.stream().map(d -> d.from(from.device())).toList());
  }

  public List<Entry> append(Draft draft) {
    return append(List.of(draft));
  }

  /**
   * Names who the calling thread's entries come from. The door knows it; no page need hand it on,
   * and none can let somebody write who may only look.
   */
  public void sentFrom(Supplier<Sender> who) {
    sender = who;
  }

  /**
   * Takes in the entries of another book: those whose keys are not here yet, each with where it
   * stood before. What they follow is counted anew in this book's positions.
   */
  public List<Entry> bringIn(BookFile.Contents other) {
    List<Draft> drafts = new ArrayList<>();
    for (int i = 0; i < other.entries().size(); i++) {
      Entry entry = other.entries().get(i);
      drafts.add(
          new Draft(
              entry.key(),
              entry.kind(),
              entry.v(),
              entry.after(),
              entry.who(),
              entry.device(),
              entry.claimed() == null ? entry.at() : entry.claimed(),
              entry.body(),
              new Origin(other.header().id(), entry.n(), other.hashes().get(i))));
    }
    return writer.append(drafts);
  }

  /** The id made when this book was begun. */
  public String id() {
    return log.id();
  }

  /** Another one once the book was put back from an older copy of it. */
  public String generation() {
    return generation.id();
  }

  /** Position of the last entry, 0 in a book just begun. */
  public long lastN() {
    return log.lastN();
  }

  /** SHA-256 of the last line, of the header in a book just begun. */
  public String lastHash() {
    return log.lastHash();
  }

  /** As much of its file as is on the disk for good. */
  public BookFile.Extent extent() {
    return log.extent();
  }

  /** SHA-256 of the line of entry n, of the header for 0. */
  public String hashAt(long n) {
    return log.hashAt(n);
  }

  /**
   * Asks the index.
   *
   * @throws BookRefused while it is built anew, in words for the page
   */
  public <T> T read(HandleCallback<T, RuntimeException> question) {
    return index.read(question);
  }

  boolean indexIsOpen() {
    return index.isOpen();
  }

  /** For tests of what it holds. */
  Jdbi index() {
    return index.jdbi();
  }

  /** One sentence while the disk is nearly full. */
  public Optional<String> littleRoom() {
    return log.room().warning();
  }

  /** All entries from position n on, read from the file. */
  public List<Entry> entries(long fromN) {
    List<Entry> entries = new ArrayList<>();
    log.each(Math.max(1, fromN), log.lastN(), entries::add);
    return entries;
  }

  public Optional<Entry> byKey(String key) {
    return Optional.ofNullable(log.find(key)).map(log::entry);
  }

  /** An entry's kind and where it belongs now; empty for a key that is not in the book. */
  Optional<Histories.Located> locate(String key) {
    return belonging.locate(key);
  }

  /** Another number once earlier entries are found to belong to another car or corner. */
  long lastMove() {
    return index.lastMove();
  }

  /** The line of an entry as it stands in the file; empty for a key that is not in the book. */
  public Optional<String> line(String key) {
    return Optional.ofNullable(log.find(key)).map(log::line);
  }

  /** The entries of one car in order. */
  public List<Entry> ofCar(String car) {
    List<Long> places =
        read(
            handle ->
                handle
                    .createQuery("select n from entry where car = :car order by car, n")
                    .bind("car", car)
                    .mapTo(Long.class)
                    .list());
    List<Entry> entries = new ArrayList<>(places.size());
    for (int from = 0, to = 1; from < places.size(); from = to++) {
      // What stands together is read together.
      while (to < places.size() && places.get(to) == places.get(to - 1) + 1) {
        to++;
      }
      log.each(places.get(from), places.get(to - 1), entries::add);
    }
    return entries;
  }

  /**
   * Calls with the entries of each write, in order, before those who sent them are answered, and
   * with none when the index was built anew. The thread that writes calls: be quick, do not append.
   */
  void followedBy(Consumer<List<Entry>> follower) {
    writer.followedBy(follower);
  }

  /**
   * Calls with the entries of each write, in order, after those who sent them were answered. It is
   * called by the thread that writes: it must be quick and must not append.
   */
  public void onAppended(Consumer<List<Entry>> listener) {
    writer.onAppended(listener);
  }

  /** How often the disk was waited for since the book was opened. */
  long forces() {
    return log.forces();
  }

  /** For tests of what happens when the disk fails. */
  void replaceDisk(AppendFile disk) throws IOException {
    log.replaceDisk(disk);
  }

  /** Writes what still waits, closes the index in order and frees the folder. */
  @Override
  public void close() {
    if (closed.compareAndSet(false, true)) {
      writer.close();
      index.close();
      try {
        generation.leave(folder, log);
      } catch (IOException noted) {
        // The last one noted stands: it only sees a shorter part of the book put back.
      }
      closeFiles(log, lock);
    }
  }

  private static void closeFiles(LogFile log, FolderLock lock) {
    try (lock) {
      if (log != null) {
        log.close();
      }
    } catch (IOException trouble) {
      throw new UncheckedIOException("the book could not be closed", trouble);
    }
  }
}
