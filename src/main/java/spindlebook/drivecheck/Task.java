package spindlebook.drivecheck;

import java.util.Map;
import spindlebook.drawing.State;
import spindlebook.page.FormKey;

/**
 * One thing to do, verb first.
 *
 * @param state the shape before it; null for a job
 * @param verb what to do: "Torque"
 * @param what on what: "limit strap, bolts"
 * @param href where it is done, or what it rests on
 * @param tick where a tick says that it is done; null where that takes more
 * @param ticked what is sent with the tick
 */
public record Task(
    State state, String verb, String what, String href, String tick, Map<String, String> ticked) {

  /** Fresh for each form. */
  public FormKey formKey(long after) {
    return FormKey.fresh(after);
  }

  public String words() {
    return what.isEmpty() ? verb : verb + " " + what;
  }
}
