package spindlebook.round;

import java.util.List;
import spindlebook.page.FormKey;
import spindlebook.page.FormPart;
import spindlebook.page.ReadingRow;

/**
 * A guided round at one of its steps.
 *
 * @param plan everything a phone needs to go on without a network, as JSON
 * @param step null when nothing is left to read
 * @param end what it came to then; null before
 * @param saved what was just kept; null when nothing was
 */
public record GuideView(
    String round,
    String plan,
    Step step,
    RoundEnd end,
    JustSaved saved,
    String backHref,
    String skipHref) {

  /**
   * What is asked now.
   *
   * @param parts what is sent along, and the height's boxes where it is the height itself
   * @param reading one reading; null where it is the height itself, or the look at all others
   * @param keep what its key says
   */
  public record Step(FormKey key, List<FormPart> parts, ReadingRow reading, String keep) {}
}
