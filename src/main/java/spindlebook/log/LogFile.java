package spindlebook.log;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;

/**
 * {@code book.jsonl}, opened: checked on the way in, then read by many threads and lengthened by
 * one.
 */
final class LogFile implements AutoCloseable {
  static final String NAME = "book.jsonl";

  private final Path path;
  private final Map<String, Long> keys;
  private final String id;
  private volatile AppendFile out;

  // No channel: an interrupted reader would close it under everybody.
  private final RandomAccessFile in;

  private Left left;

  /** Where the line of each entry begins, and behind the last one where the next will. */
  private long[] starts = new long[1024];

  private long lastN;
  private String lastHash;
  private String broken;
  private boolean restored;

  /** How the file was left after the last write: which one it is, how long, and written when. */
  private record Left(Object file, long length, FileTime written) {
    static Left of(Path path) throws IOException {
      BasicFileAttributes now = Files.readAttributes(path, BasicFileAttributes.class);
      return new Left(now.fileKey(), now.size(), now.lastModifiedTime());
    }

    boolean sameFile(Left other) {
      return Objects.equals(file, other.file) && length == other.length;
    }
  }

  private LogFile(Path path, Scan scan, long[] starts, long end) throws IOException {
    this.path = path;
    in = new RandomAccessFile(path.toFile(), "r");
    keys = new ConcurrentHashMap<>(scan.keys);
    id = scan.header.id();
    lastN = scan.lastN;
    lastHash = scan.lastHash;
    this.starts = starts;
    this.starts[(int) lastN + 1] = end;
  }

  /**
   * Opens the book in a folder, begun if there is none; a torn tail is set aside and told.
   *
   * @param once what it held; lacking some of that it is refused before anything is written
   * @param reader gets every entry
   */
  static LogFile open(
      Path folder, Instant now, OnceHeld once, Consumer<Entry> reader, Consumer<String> tell) {
    Path path = folder.resolve(NAME);
    try {
      if (!Files.exists(path)) {
        begin(path, now, once);
      }
      long[][] starts = {new long[1024]};
      Set<OnceHeld.End> found = new HashSet<>();
      Scan scan =
          Scan.of(
              path,
              (entry, raw, hash) -> {
                reader.accept(entry);
                starts[0] = roomFor(starts[0], entry.n() + 1);
                starts[0][(int) entry.n()] = raw.start();
                OnceHeld.End end = new OnceHeld.End(entry.n(), hash);
                if (once.ends().contains(end)) {
                  found.add(end);
                }
              });
      refuseDamageBelowForced(scan);
      boolean restored = once.refuseLost(path, scan, found);
      LogFile log = settle(path, scan, roomFor(starts[0], scan.lastN + 1), tell);
      log.restored = restored;
      return log;
    } catch (IOException trouble) {
      throw BookRefused.book(trouble, "%s cannot be opened for writing: %s.", path, said(trouble));
    }
  }

  private static void begin(Path path, Instant now, OnceHeld once) throws IOException {
    if (once.aBook()) {
      throw BookRefused.book(
          "%s is missing, but the files beside it show that there was a book%s: put it back, or"
              + " begin a new one in another folder (--data).",
          path, once.most() == 0 ? "" : " of " + once.most() + " entries");
    }
    byte[] header = Header.begun(now.truncatedTo(ChronoUnit.SECONDS)).line();
    byte[] line = Arrays.copyOf(header, header.length + 1);
    line[header.length] = '\n';
    WholeFile.put(path, line);
  }

  private static void refuseDamageBelowForced(Scan scan) {
    if (scan.damage != null && scan.damage.n() <= scan.forced) {
      throw BookRefused.book(
          "%s Entries up to %d are known to have been on the disk, so nothing was changed: put a"
              + " backup back with 'restore'.",
          scan.damage.sentence(), scan.forced);
    }
  }

  private static LogFile settle(Path path, Scan scan, long[] starts, Consumer<String> tell)
      throws IOException {
    String aside = null;
    if (scan.damage != null) {
      aside = setAside(path, scan);
    }
    AppendFile out = new AppendFile(path);
    try {
      if (aside != null) {
        out.cutTo(scan.end);
        tell.accept(
            String.format(
                "%s The end of the book was torn off there and is set aside in %s; the book goes on"
                    + " after entry %d.",
                scan.damage.sentence(), aside, scan.lastN));
      }
      long end = scan.end;
      if (!scan.ended) {
        out.write(new byte[] {'\n'});
        end++;
        tell.accept("The last line of " + NAME + " was whole but for its line end, and is kept.");
      }
      // What was read may so far be only in memory: from here on it counts as forced.
      out.force();
      LogFile log = new LogFile(path, scan, starts, end);
      log.out = out;
      log.left = Left.of(path);
      return log;
    } catch (IOException trouble) {
      out.close();
      throw trouble;
    }
  }

  /** Copies the torn tail beside the book before it is cut off; no earlier one is overwritten. */
  private static String setAside(Path path, Scan scan) throws IOException {
    String stem = "book.torn-" + (scan.lastN + 1);
    Path aside = path.resolveSibling(stem + ".jsonl");
    for (int i = 2; Files.exists(aside); i++) {
      aside = path.resolveSibling(stem + "-" + i + ".jsonl");
    }
    try (FileChannel from = FileChannel.open(path, StandardOpenOption.READ);
        FileChannel to =
            FileChannel.open(aside, WholeFile.NEW, WholeFile.owners(aside, "rw-------"))) {
      for (long at = scan.end; at < from.size(); ) {
        at += from.transferTo(at, from.size() - at, to);
      }
      to.force(true);
    }
    WholeFile.forceFolder(path.getParent());
    return aside.getFileName().toString();
  }

  /** Lets a test put a failing disk below. */
  void replaceDisk(AppendFile other) throws IOException {
    out.close();
    out = other;
  }

  /**
   * Puts lines on the disk, all or none. Afterwards they are there for good, but nobody sees them
   * before {@link #publish}.
   */
  void append(byte[] lines) {
    refuseIfNothingIsTaken();
    long good = end();
    try {
      out.write(lines);
    } catch (IOException trouble) {
      takeBack(good);
      throw BookRefused.disk(
          trouble, "The book could not be written (%s); nothing of this was kept.", said(trouble));
    }
    try {
      out.force();
    } catch (IOException trouble) {
      // After a failed force the system may call the lost pages clean, so a second try proves
      // nothing. The lines go, or a restart would find them in memory and believe them.
      takeBack(good);
      broken =
          "The disk failed while the book was being written ("
              + said(trouble)
              + "); nothing more is taken until Spindlebook is started again.";
      throw BookRefused.disk(trouble, "%s", broken);
    }
    if (!leave(good + lines.length)) {
      takeBack(good);
      throw changed(null);
    }
  }

  /** Whether it is as this process left it; only the thread that writes may ask. */
  void refuseIfNothingIsTaken() {
    if (broken != null) {
      throw BookRefused.disk(null, "%s", broken);
    }
    if (!asLeft(end())) {
      throw changed(null);
    }
  }

  /**
   * Whether the path still leads to the file that was opened, and that is as this program left it.
   * One that was only touched, or written anew with the same bytes, is read through once.
   */
  private boolean asLeft(long length) {
    try {
      Left now = Left.of(path);
      if (!now.sameFile(left) || now.length != length) {
        return false;
      }
      if (!now.equals(left)) {
        Scan scan = Scan.of(path, (entry, raw, hash) -> {});
        if (scan.damage != null || !scan.lastHash.equals(lastHash())) {
          return false;
        }
        left = now;
      }
      return true;
    } catch (IOException | BookRefused gone) {
      return false;
    }
  }

  /** Notes how the file is left; false when the path no longer leads to it, or not so far. */
  private boolean leave(long length) {
    try {
      Left now = Left.of(path);
      if (!now.sameFile(new Left(left.file, length, null))) {
        return false;
      }
      left = now;
      return true;
    } catch (IOException gone) {
      return false;
    }
  }

  private static BookRefused changed(Throwable cause) {
    return BookRefused.disk(
        cause,
        "%s was moved, replaced or changed while Spindlebook had it open, so nothing is taken: stop"
            + " Spindlebook, put the right file there, then start it again.",
        NAME);
  }

  /** Takes nothing more: what the file holds may no longer be what this process believes. */
  BookRefused breakDown(Throwable unforeseen) {
    broken =
        "Something failed inside the book ("
            + unforeseen
            + "); nothing more is taken until Spindlebook is started again.";
    return BookRefused.disk(unforeseen, "%s", broken);
  }

  private void takeBack(long good) {
    try {
      out.cutTo(good);
      leave(good);
    } catch (IOException trouble) {
      broken =
          "A line that could not be written whole could not be taken back ("
              + said(trouble)
              + "); nothing more is taken until Spindlebook is started again.";
    }
  }

  synchronized void publish(List<Entry> entries, List<Integer> lengths, String hash) {
    for (int i = 0; i < entries.size(); i++) {
      Entry entry = entries.get(i);
      starts = roomFor(starts, entry.n() + 1);
      starts[(int) entry.n() + 1] = starts[(int) entry.n()] + lengths.get(i);
      keys.put(entry.key(), entry.n());
      lastN = entry.n();
    }
    lastHash = hash;
  }

  String id() {
    return id;
  }

  /** Whether it lacks entries that were in it once, and somebody said that it was put back. */
  boolean restored() {
    return restored;
  }

  long forces() {
    return out.forces();
  }

  Room room() {
    return new Room(out.free(), end());
  }

  synchronized long lastN() {
    return lastN;
  }

  synchronized String lastHash() {
    return lastHash;
  }

  synchronized BookFile.Extent extent() {
    return new BookFile.Extent(id, lastN, lastHash, end());
  }

  private synchronized long end() {
    return starts[(int) lastN + 1];
  }

  /** Position of the entry with this key, or null. */
  Long find(String key) {
    return keys.get(key);
  }

  Entry entry(long n) {
    Entry[] found = new Entry[1];
    each(n, n, entry -> found[0] = entry);
    return found[0];
  }

  /** Reads entries in order, from one position to another, both included. */
  void each(long from, long to, Consumer<Entry> taker) {
    for (long n = from; n <= to; ) {
      // Many lines at one go, but never more than a few megabytes.
      long last = n;
      while (last < to && place(last + 2) - place(n) < (4L << 20)) {
        last++;
      }
      byte[] lines = bytes(place(n), place(last + 1));
      int at = 0;
      for (; n <= last; n++) {
        int length = (int) (place(n + 1) - place(n));
        taker.accept(parse(Arrays.copyOfRange(lines, at, at + length - 1)));
        at += length;
      }
    }
  }

  /** The line of entry n as it stands there, without its end. */
  String line(long n) {
    return new String(bytes(place(n), place(n + 1) - 1), StandardCharsets.UTF_8);
  }

  /** SHA-256 of the line of entry n, of the header for 0. */
  String hashAt(long n) {
    if (n < 0 || n > lastN()) {
      throw new IllegalArgumentException("the book has no entry " + n);
    }
    long start = n == 0 ? 0 : place(n);
    return Sha256.hex(bytes(start, place(n + 1) - 1));
  }

  private synchronized long place(long n) {
    return starts[(int) n];
  }

  private byte[] bytes(long from, long to) {
    byte[] bytes = new byte[(int) (to - from)];
    synchronized (in) {
      try {
        in.seek(from);
        in.readFully(bytes);
      } catch (IOException trouble) {
        throw changed(trouble);
      }
    }
    return bytes;
  }

  private static Entry parse(byte[] line) {
    try {
      return Line.read(line);
    } catch (IOException trouble) {
      throw changed(trouble);
    }
  }

  private static long[] roomFor(long[] places, long n) {
    return n < places.length
        ? places
        : Arrays.copyOf(places, Math.toIntExact(Math.max(n + 1, places.length * 2L)));
  }

  /** The system's own words for what went wrong, without the name of the file. */
  static String said(IOException trouble) {
    if (trouble instanceof AccessDeniedException) {
      return "no permission";
    }
    if (trouble instanceof NoSuchFileException) {
      return "it is not there";
    }
    if (trouble instanceof FileAlreadyExistsException) {
      return "a file is in its way";
    }
    if (trouble instanceof FileSystemException named && named.getReason() != null) {
      return named.getReason();
    }
    String words = trouble.getMessage();
    return words == null ? trouble.getClass().getSimpleName() : words;
  }

  @Override
  public void close() throws IOException {
    in.close();
    out.close();
  }
}
