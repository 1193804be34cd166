package spindlebook.fold;

import java.time.Instant;
import java.util.List;
import spindlebook.definition.Adjuster;
import spindlebook.definition.Setting;

/**
 * An adjuster and what it is set to now.
 *
 * @param setting null when nobody has said
 * @param since position of the entry that set it
 * @param inDoubt settings of it that wait for an answer
 */
public record InForce(
    Adjuster adjuster, Setting setting, long since, Instant at, List<Doubted> inDoubt) {

  public InForce {
    inDoubt = List.copyOf(inDoubt);
  }
}
