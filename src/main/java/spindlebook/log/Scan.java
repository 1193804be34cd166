package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One walk over a sealed book: its header, the entries that stand in an unbroken chain, and where
 * and how that chain breaks, if it does.
 *
 * <p>A line whose {@code prev} does not fit may itself be wrong, or the line before it may have
 * been changed. Both are taken as damaged, so an entry is handed on only when the line after it has
 * spoken for it.
 */
final class Scan {
  /** Takes each good entry with the place of its line. */
  interface Taker {
    void take(Entry entry, RawLines.Raw raw, String hash);
  }

  /** The first entry that cannot be trusted, and a sentence about the line that shows it. */
  record Damage(long n, String sentence) {}

  /** As it stands in a line this program wrote; two lines that ran together show it twice. */
  private static final Pattern FORCED =
      Pattern.compile("\"forced\":([0-9]{1,18}),\"prev\":\"[0-9a-f]");

  final String file;
  Header header;
  Damage damage;
  final Map<String, Long> keys = new HashMap<>();
  long lastN;
  String lastHash;

  /** Where the good part of the file ends. */
  long end;

  /** Whether the last good line has its line feed. */
  boolean ended;

  /** The highest {@code forced} that any line names, those of the damaged part included. */
  long forced;

  private Scan(String file) {
    this.file = file;
  }

  static Scan of(Path path, Taker taker) throws IOException {
    Scan scan = new Scan(path.getFileName().toString());
    try (RawLines lines = new RawLines(path)) {
      scan.readHeader(lines.next());
      scan.readEntries(lines, taker);
    }
    return scan;
  }

  private void readHeader(RawLines.Raw raw) {
    if (raw == null) {
      throw BookRefused.book(
          "%s is empty: put a backup back with 'restore', or remove it to begin a new book.", file);
    }
    JsonNode line;
    try {
      line = Json.read(raw.bytes());
    } catch (IOException wrong) {
      throw BookRefused.book(
          wrong,
          "The first line of %s is not the header of a book: %s. Nothing was changed: put the"
              + " unchanged file back.",
          file,
          wrong.getMessage());
    }
    if (endsInCarriageReturn(raw)) {
      throw BookRefused.book(
          "The lines of %s end in a carriage return: an editor or a transfer changed it, put the"
              + " unchanged file back.",
          file);
    }
    header = Header.read(line, file);
    accept(raw, 0);
  }

  private void readEntries(RawLines lines, Taker taker) throws IOException {
    Entry waiting = null;
    RawLines.Raw waitingRaw = null;
    long before = end;
    for (RawLines.Raw raw = lines.next(); raw != null; raw = lines.next()) {
      long n = lastN + 1;
      try {
        Entry entry = read(raw, n);
        if (!entry.prev().equals(lastHash)) {
          // The line before is as suspect as this one: step back behind it.
          damage = new Damage(n - 1, sentence(raw, "it does not follow from the line before it"));
          forget(waiting, before);
          waiting = null;
          noteForced(raw);
          break;
        }
        if (waiting != null) {
          taker.take(waiting, waitingRaw, lastHash);
        }
        keys.put(entry.key(), n);
        forced = Math.max(forced, entry.forced());
        before = end;
        waiting = entry;
        waitingRaw = raw;
        accept(raw, n);
      } catch (IOException wrong) {
        damage = new Damage(n, sentence(raw, wrong.getMessage()));
        noteForced(raw);
        break;
      }
    }
    if (waiting != null) {
      taker.take(waiting, waitingRaw, lastHash);
    }
    for (RawLines.Raw raw = lines.next(); raw != null; raw = lines.next()) {
      noteForced(raw);
    }
  }

  private Entry read(RawLines.Raw raw, long n) throws IOException {
    if (raw.tooLong()) {
      throw new IOException("it is longer than " + RawLines.LONGEST + " bytes");
    }
    if (endsInCarriageReturn(raw)) {
      throw new IOException("it ends in a carriage return");
    }
    Entry entry = Line.read(raw.bytes());
    if (entry.n() != n) {
      throw new IOException("its n is " + entry.n() + " where " + n + " should stand");
    }
    if (entry.forced() >= n || entry.after() >= n) {
      throw new IOException("its 'forced' or 'after' is not below its n");
    }
    Long first = keys.get(entry.key());
    if (first != null) {
      throw new IOException("its key is that of entry " + first);
    }
    return entry;
  }

  private void accept(RawLines.Raw raw, long n) {
    lastN = n;
    lastHash = Sha256.hex(raw.bytes());
    end = raw.end();
    ended = raw.ended();
  }

  private void forget(Entry entry, long before) {
    if (entry != null) {
      keys.remove(entry.key());
      lastN = entry.n() - 1;
      lastHash = entry.prev();
      end = before;
      ended = true;
    }
  }

  /** Looks for what a line in the damaged part knew, even if it can no longer be read whole. */
  private void noteForced(RawLines.Raw raw) {
    Matcher claims = FORCED.matcher(new String(raw.bytes(), StandardCharsets.ISO_8859_1));
    while (claims.find()) {
      forced = Math.max(forced, Long.parseLong(claims.group(1)));
    }
  }

  private String sentence(RawLines.Raw raw, String what) {
    return String.format("Line %d of %s is damaged: %s.", raw.number(), file, what);
  }

  private static boolean endsInCarriageReturn(RawLines.Raw raw) {
    return raw.bytes().length > 0 && raw.bytes()[raw.bytes().length - 1] == '\r';
  }
}
