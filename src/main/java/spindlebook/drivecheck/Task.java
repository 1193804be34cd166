package spindlebook.drivecheck;

import java.util.Map;
import spindlebook.advice.ThingFirst;
import spindlebook.card.Shown;
import spindlebook.drawing.State;
import spindlebook.page.FormKey;

/**
 * One thing to see to: in a sentence, and as a job, verb first.
 *
 * @param place the corner's, in words; "the whole car"
 * @param more what cures it, or why it is so; may be empty
 * @param href where it is done, or what it rests on
 * @param verb what to do: "Torque"
 * @param what on what: "limit strap, bolts"; may be empty
 * @param tick where a tick says that it is done; null where that takes more
 * @param ticked what is sent with the tick
 */
public record Task(
    ThingFirst thing,
    String place,
    String words,
    String more,
    String href,
    String verb,
    String what,
    String tick,
    Map<String, String> ticked) {

  Task(ThingFirst thing, String place, String words, String more, String href) {
    this(thing, place, words, more, href, "", "", null, Map.of());
  }

  Task job(String doing, String on) {
    return new Task(thing, place, words, more, href, doing, on, tick, ticked);
  }

  Task ticked(String where, Map<String, String> sent) {
    return new Task(thing, place, words, more, href, verb, what, where, sent);
  }

  /** The shape before it; null for a job that is done by a tick. */
  public State state() {
    return tick == null ? Shown.state(thing.why()) : null;
  }

  /** Fresh for each form. */
  public FormKey formKey(long after) {
    return FormKey.fresh(after);
  }

  public String job() {
    return what.isEmpty() ? verb : verb + " " + what;
  }
}
