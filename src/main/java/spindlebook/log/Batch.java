package spindlebook.log;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** The lines that will share one write and one force, as they are put together. */
final class Batch {
  private final LogFile log;
  private final Instant at;
  private final long forced;
  private final Map<String, Entry> byKey = new HashMap<>();

  final List<Entry> entries = new ArrayList<>();
  final List<Integer> lengths = new ArrayList<>();
  private final ByteArrayOutputStream lines = new ByteArrayOutputStream();
  private long lastN;
  private String lastHash;

  Batch(LogFile log, Instant at) {
    this.log = log;
    this.at = at;
    forced = log.lastN();
    lastN = forced;
    lastHash = log.lastHash();
  }

  /**
   * Takes a whole submission or, by an exception, nothing of it.
   *
   * @return its entries as they will stand in the book, also those that were there, in its order
   */
  List<Entry> add(List<Draft> drafts) {
    Part part = new Part();
    OwnKey keys = new OwnKey(drafts, part::known);
    List<Entry> answer = new ArrayList<>();
    for (Draft draft : drafts) {
      answer.add(part.place(draft.origin() == null ? keys.of(draft) : draft));
    }
    part.join();
    return List.copyOf(answer);
  }

  byte[] lines() {
    return lines.toByteArray();
  }

  int size() {
    return lines.size();
  }

  String lastHash() {
    return lastHash;
  }

  /** The lines of one submission, not yet part of the batch. */
  private final class Part {
    private final Map<String, Entry> added = new LinkedHashMap<>();
    private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    private final List<Integer> sizes = new ArrayList<>();

    /** For each imported entry's old position its new one. */
    private final TreeMap<Long, Long> moved = new TreeMap<>();

    private long n = lastN;
    private String hash = lastHash;

    Entry place(Draft draft) {
      Entry entry = known(draft.key());
      if (entry == null) {
        entry = write(draft);
      }
      if (draft.origin() != null) {
        moved.put(draft.origin().n(), entry.n());
      }
      return entry;
    }

    private Entry known(String key) {
      Entry entry = added.get(key);
      if (entry == null) {
        entry = byKey.get(key);
      }
      if (entry == null) {
        Long stored = log.find(key);
        entry = stored == null ? null : log.entry(stored);
      }
      return entry;
    }

    private Entry write(Draft draft) {
      long after = after(draft);
      if (after > n) {
        throw BookRefused.entry(
            "Entry %s claims to follow entry %d, but the book ends at %d.", draft.key(), after, n);
      }
      Entry wanted =
          new Entry(
              n + 1,
              at,
              draft.claimed(),
              draft.who(),
              draft.device(),
              draft.key(),
              draft.kind(),
              draft.v(),
              after,
              forced,
              hash,
              draft.body(),
              draft.origin());
      byte[] line = line(wanted);
      // The entry as it will be read back, not as it was handed in.
      Entry entry = readBack(draft.key(), line);
      bytes.writeBytes(line);
      bytes.write('\n');
      sizes.add(line.length + 1);
      hash = Sha256.hex(line);
      n++;
      added.put(entry.key(), entry);
      return entry;
    }

    private long after(Draft draft) {
      if (draft.origin() == null) {
        return draft.after();
      }
      Map.Entry<Long, Long> here = moved.floorEntry(draft.after());
      return here == null ? 0 : here.getValue();
    }

    private static byte[] line(Entry wanted) {
      byte[] line;
      try {
        Json.check(wanted.body());
        line = Line.write(wanted);
      } catch (IOException wrong) {
        throw cannotBeWritten(wanted.key(), wrong);
      }
      if (line.length > RawLines.LONGEST) {
        throw BookRefused.entry(
            "Entry %s is too long: its line would take %d bytes, %d are allowed.",
            wanted.key(), line.length, RawLines.LONGEST);
      }
      return line;
    }

    /** Nothing may be written that would later stop the book from opening. */
    private static Entry readBack(String key, byte[] line) {
      try {
        return Line.read(line);
      } catch (IOException wrong) {
        throw cannotBeWritten(key, wrong);
      }
    }

    private static BookRefused cannotBeWritten(String key, IOException wrong) {
      return BookRefused.entry(
          "Entry %s cannot be written as a line of the book: %s.", key, wrong.getMessage());
    }

    void join() {
      byKey.putAll(added);
      entries.addAll(added.values());
      lengths.addAll(sizes);
      lines.writeBytes(bytes.toByteArray());
      lastN = n;
      lastHash = hash;
    }
  }
}
