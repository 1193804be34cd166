package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/** Reads the file of a book without opening the book: nothing is locked, written or repaired. */
public final class BookFile {
  /** Of the book in its folder. */
  public static final String NAME = LogFile.NAME;

  private BookFile() {}

  /**
   * All a file holds.
   *
   * @param hashes SHA-256 of each entry's line, in the order of the entries
   * @param sealed false for a book written by hand, whose lines do not vouch for one another
   * @param lastHash hash of the last line, the header's if there is no entry
   */
  public record Contents(
      Header header, List<Entry> entries, List<String> hashes, boolean sealed, String lastHash) {
    public Contents {
      entries = List.copyOf(entries);
      hashes = List.copyOf(hashes);
    }

    /** What of it belongs to one car, by the car's key. */
    public Contents ofCar(String car) {
      Belonging belonging = new Belonging();
      entries.forEach(belonging::add);
      List<Integer> its =
          IntStream.range(0, entries.size())
              .filter(i -> car.equals(belonging.where(entries.get(i).key()).car()))
              .boxed()
              .toList();
      return new Contents(
          header,
          its.stream().map(entries::get).toList(),
          its.stream().map(hashes::get).toList(),
          sealed,
          lastHash);
    }
  }

  /**
   * How far the chain of a file holds.
   *
   * @param hashes SHA-256 of the header's line and of each entry's: that of entry n stands at n
   * @param end where the last good line ends
   * @param damage a sentence about the first line that does not hold; null when all do
   * @param torn whether that is an end that was torn off before anybody was answered
   */
  public record Chain(Header header, List<String> hashes, long end, String damage, boolean torn) {
    public Chain {
      hashes = List.copyOf(hashes);
    }

    /** Position of the last good entry, 0 when there is none. */
    public long n() {
      return hashes.size() - 1L;
    }

    /** Hash of the last good line. */
    public String hash() {
      return hashes.get(hashes.size() - 1);
    }

    /** Whether an entry is in it as it was written. */
    public boolean holds(End end) {
      return end.n() <= n() && hashes.get((int) end.n()).equals(end.hash());
    }

    /** All of it, unless something is wrong with it. */
    public Chain whole() {
      if (damage != null) {
        throw BookRefused.book("%s", damage);
      }
      return this;
    }
  }

  /**
   * The last entry that somebody knows of a book.
   *
   * @param by the file that says so
   * @param hash of its line
   */
  public record End(String by, long n, String hash) {}

  /**
   * As much of a book's file as is on the disk for good.
   *
   * @param book the id in its header
   * @param n position of the last entry
   * @param hash hash of the last line
   * @param bytes where that line ends
   */
  public record Extent(String book, long n, String hash, long bytes) {}

  /** Walks over a book as the program writes it and checks every line against the next one. */
  public static Chain chain(Path file, Consumer<Entry> taker) {
    List<String> hashes = new ArrayList<>();
    try {
      Scan scan =
          Scan.of(
              file,
              (entry, raw, hash) -> {
                if (hashes.isEmpty()) {
                  hashes.add(entry.prev());
                }
                hashes.add(hash);
                taker.accept(entry);
              });
      if (hashes.isEmpty()) {
        hashes.add(scan.lastHash);
      }
      boolean torn = scan.damage != null && scan.damage.n() > scan.forced;
      String damage = scan.damage == null ? null : scan.damage.sentence();
      return new Chain(scan.header, hashes, scan.end, damage, torn);
    } catch (IOException unreadable) {
      throw cannotRead(file, unreadable);
    }
  }

  /** The id of the book whose file this is, by its first line. */
  public static String id(Path file) throws IOException {
    try (RawLines lines = new RawLines(file)) {
      RawLines.Raw first = lines.next();
      if (first == null) {
        throw new EOFException("it is empty");
      }
      return Header.read(Json.read(first.bytes()), file.getFileName().toString()).id();
    }
  }

  /** What the files beside a book know of its end; a book without entries has nothing to lose. */
  public static List<End> knownBeside(Path folder) throws IOException {
    List<End> ends = new ArrayList<>();
    Generation generation = Generation.read(folder);
    if (generation != null) {
      ends.add(new End(Generation.FILE, generation.n(), generation.hash()));
    }
    CleanMark.read(folder)
        .ifPresent(mark -> ends.add(new End(CleanMark.FILE, mark.n(), mark.hash())));
    ends.removeIf(end -> end.n() < 1);
    return ends;
  }

  /**
   * How far the book in a folder goes, whoever has it open: an end that is just being written, or
   * was torn off, is left out.
   *
   * @throws BookRefused when an entry is missing or damaged that was in the book
   */
  public static Extent extent(Path folder) {
    Path file = folder.resolve(LogFile.NAME);
    try {
      List<End> ends = knownBeside(folder);
      StandardOpenOption may =
          Files.isWritable(file) ? StandardOpenOption.WRITE : StandardOpenOption.READ;
      try (FileChannel last = FileChannel.open(file, may)) {
        last.force(true);
      }
      Chain chain = chain(file, entry -> {});
      if (!chain.torn()) {
        chain.whole();
      }
      for (End end : ends) {
        if (!chain.holds(end)) {
          throw BookRefused.book(
              "%s lacks entry %d, which %s knows was in it.", file, end.n(), end.by());
        }
      }
      return new Extent(chain.header().id(), chain.n(), chain.hash(), chain.end());
    } catch (IOException unreadable) {
      throw cannotRead(file, unreadable);
    }
  }

  /** Copies the first bytes of a file into a new one, and waits until they are on the disk. */
  public static void copy(Path from, long bytes, Path to) throws IOException {
    try (InputStream in = Files.newInputStream(from);
        FileChannel out = FileChannel.open(to, WholeFile.NEW, WholeFile.owners(to, "rw-------"))) {
      byte[] part = new byte[1 << 20];
      for (long left = bytes; left > 0; ) {
        int got = in.readNBytes(part, 0, (int) Math.min(part.length, left));
        if (got == 0) {
          throw new EOFException(from.getFileName() + " is shorter than it was");
        }
        for (ByteBuffer some = ByteBuffer.wrap(part, 0, got); some.hasRemaining(); ) {
          out.write(some);
        }
        // Part by part, so that nobody who writes meanwhile waits for all of it.
        out.force(true);
        left -= got;
      }
    }
  }

  /** The system's own words for what went wrong with a file. */
  public static String said(IOException trouble) {
    return LogFile.said(trouble);
  }

  /** Reads a book as the program writes it; the first thing wrong with it is refused. */
  public static Contents read(Path file) {
    List<Entry> entries = new ArrayList<>();
    Chain chain = chain(file, entries::add).whole();
    List<String> hashes = chain.hashes().subList(1, chain.hashes().size());
    return new Contents(chain.header(), entries, hashes, true, chain.hash());
  }

  /**
   * Reads a book that may have been written by hand: without header, {@code n}, {@code at}, {@code
   * after}, {@code forced}, {@code prev}, {@code key}, {@code who} and {@code v}, and with blank
   * lines. If its first entry has a {@code prev} it is read as {@link #read} does.
   */
  public static Contents readByHand(Path file) {
    try (RawLines lines = new RawLines(file)) {
      ByHand reader = new ByHand(file.getFileName().toString());
      for (RawLines.Raw raw = lines.next(); raw != null; raw = lines.next()) {
        if (!raw.blank() && !reader.take(raw)) {
          return read(file);
        }
      }
      return reader.contents();
    } catch (IOException unreadable) {
      throw cannotRead(file, unreadable);
    }
  }

  private static BookRefused cannotRead(Path file, IOException unreadable) {
    return BookRefused.book(
        unreadable, "%s cannot be read: %s.", file.getFileName(), LogFile.said(unreadable));
  }

  /** What has been read so far of a book written by hand. */
  private static final class ByHand {
    private final String file;
    private final List<Entry> entries = new ArrayList<>();
    private final List<String> hashes = new ArrayList<>();
    private final Set<String> keys = new HashSet<>();
    private Header header;
    private String lastHash = Sha256.hex(new byte[0]);

    ByHand(String file) {
      this.file = file;
    }

    /** Takes one line; false when it shows that the book is sealed. */
    boolean take(RawLines.Raw raw) {
      try {
        if (raw.tooLong()) {
          throw new IOException("it is longer than " + RawLines.LONGEST + " bytes");
        }
        JsonNode line = Json.read(withoutMark(raw));
        if (header == null && entries.isEmpty() && Header.looksLikeOne(line)) {
          header = Header.read(line, file);
        } else if (entries.isEmpty() && line.has("prev")) {
          return false;
        } else {
          add(Line.byHand(line, entries.size() + 1L), raw);
        }
        lastHash = Sha256.hex(raw.bytes());
        return true;
      } catch (IOException wrong) {
        throw BookRefused.book(
            wrong, "Line %d of %s cannot be used: %s.", raw.number(), file, wrong.getMessage());
      }
    }

    private void add(Entry entry, RawLines.Raw raw) throws IOException {
      if (!keys.add(entry.key())) {
        throw new IOException("an earlier entry has the key " + entry.key());
      }
      entries.add(entry);
      hashes.add(Sha256.hex(raw.bytes()));
    }

    Contents contents() {
      Header known = header == null ? new Header(Header.FORMAT, "by hand", null) : header;
      boolean onlyBegun = header != null && entries.isEmpty();
      return new Contents(known, entries, hashes, onlyBegun, lastHash);
    }

    /** Some editors put a byte order mark before the first line. */
    private static byte[] withoutMark(RawLines.Raw raw) {
      byte[] bytes = raw.bytes();
      boolean marked =
          raw.number() == 1
              && bytes.length >= 3
              && bytes[0] == (byte) 0xEF
              && bytes[1] == (byte) 0xBB
              && bytes[2] == (byte) 0xBF;
      return marked ? Arrays.copyOfRange(bytes, 3, bytes.length) : bytes;
    }
  }
}
