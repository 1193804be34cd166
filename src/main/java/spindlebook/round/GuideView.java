package spindlebook.round;

import spindlebook.web.Field;
import spindlebook.web.FormKey;
import spindlebook.web.ReadingRow;

/**
 * A guided round at one of its steps.
 *
 * @param plan everything a phone needs to go on without a network, as JSON
 * @param step null when nothing is left to read
 * @param saved what was just kept; null when nothing was
 */
public record GuideView(
    String round,
    String plan,
    Step step,
    HeightView.Saved saved,
    String backHref,
    String skipHref) {

  /**
   * What is asked now; exactly one of the last two is there.
   *
   * @param spindle with {@code mark}: the height itself is asked
   * @param reading one reading
   */
  public record Step(
      String id,
      String what,
      String place,
      String name,
      String label,
      String height,
      String steering,
      String row,
      FormKey key,
      Field spindle,
      Field mark,
      ReadingRow reading) {}
}
