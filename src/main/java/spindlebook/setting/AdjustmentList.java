package spindlebook.setting;

import java.util.Set;
import org.jdbi.v3.core.Handle;
import spindlebook.corner.Content;
import spindlebook.log.Applier;
import spindlebook.log.Bodies;
import spindlebook.log.Entry;

/** Keeps which entries concern which adjuster: adjustments, their corrections and answers. */
public final class AdjustmentList implements Applier {
  @Override
  public Set<String> kinds() {
    return Set.of("adjustment", "correction", "answer");
  }

  @Override
  public void apply(Handle handle, Entry entry) {
    Content content = Bodies.read(entry);
    if (content instanceof Content.Adjustment adjustment) {
      handle
          .createUpdate(
              """
              insert into adjustment (n, key, adjuster) values (:n, :key, :adjuster)
              """)
          .bind("n", entry.n())
          .bind("key", entry.key())
          .bind("adjuster", adjustment.adjuster())
          .execute();
    } else if (content instanceof Content.Correction correction) {
      about(handle, entry, correction.target());
    } else if (content instanceof Content.Answer answer) {
      about(handle, entry, answer.target());
    }
  }

  private static void about(Handle handle, Entry entry, String target) {
    handle
        .createUpdate(
            """
            insert into adjustment (n, key, adjuster)
            select :n, key, adjuster from adjustment where key = :target fetch first 1 row only
            """)
        .bind("n", entry.n())
        .bind("target", target)
        .execute();
  }
}
