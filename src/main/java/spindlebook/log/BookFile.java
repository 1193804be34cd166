package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Reads the file of a book without opening the book: nothing is locked, written or repaired. */
public final class BookFile {
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
  }

  /** Reads a book as the program writes it; the first thing wrong with it is refused. */
  public static Contents read(Path file) {
    List<Entry> entries = new ArrayList<>();
    List<String> hashes = new ArrayList<>();
    try {
      Scan scan =
          Scan.of(
              file,
              (entry, raw, hash) -> {
                entries.add(entry);
                hashes.add(hash);
              });
      if (scan.damage != null) {
        throw BookRefused.book("%s", scan.damage.sentence());
      }
      return new Contents(scan.header, entries, hashes, true, scan.lastHash);
    } catch (IOException unreadable) {
      throw cannotRead(file, unreadable);
    }
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
