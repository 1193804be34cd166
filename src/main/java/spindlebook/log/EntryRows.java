package spindlebook.log;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/** The row every entry has in the index, with the car and corner it belongs to. */
final class EntryRows {
  private EntryRows() {}

  static void add(Handle handle, List<Entry> entries, Belonging belonging) {
    if (entries.isEmpty()) {
      return;
    }
    PreparedBatch rows =
        handle.prepareBatch(
            """
            insert into entry
              (n, key, kind, car, corner, at, claimed, who, device)
            values
              (:n, :key, :kind, :car, :corner, :at, :claimed, :who, :device)
            """);
    for (Entry entry : entries) {
      Belonging.Where where = belonging.where(entry.key());
      rows.bind("n", entry.n())
          .bind("key", entry.key())
          .bind("kind", entry.kind())
          .bind("car", where.car())
          .bind("corner", where.corner())
          .bind("at", utc(entry.at()))
          .bind("claimed", utc(entry.claimed()))
          .bind("who", entry.who())
          .bind("device", entry.device() == null ? null : entry.device().id())
          .add();
    }
    rows.execute();
  }

  /** Puts the rows of entries where those belong now. */
  static void move(Handle handle, Set<String> moved, Belonging belonging) {
    for (String key : moved) {
      handle
          .createUpdate("update entry set car = :car, corner = :corner where key = :key")
          .bind("car", belonging.where(key).car())
          .bind("corner", belonging.where(key).corner())
          .bind("key", key)
          .execute();
    }
  }

  private static OffsetDateTime utc(Instant time) {
    return time == null ? null : time.atOffset(ZoneOffset.UTC);
  }
}
