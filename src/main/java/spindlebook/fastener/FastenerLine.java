package spindlebook.fastener;

import spindlebook.card.Capital;
import spindlebook.card.Days;
import spindlebook.fold.SeenFastener;
import spindlebook.page.FormKey;
import spindlebook.words.EntryWords;

/**
 * One fastener of a list.
 *
 * @param name "Upper rod ends: jam nuts"
 * @param how its state in words, with what opened it
 * @param torque empty when the owner gave none
 */
public record FastenerLine(
    String name, String how, String torque, boolean open, String href, FormKey formKey) {

  public static FastenerLine of(SeenFastener seen, EntryWords words, long n) {
    String how = seen.state().words();
    if (seen.open() && seen.opened() != null && seen.state() != SeenFastener.State.LOOSE) {
      how += ", " + Days.day(seen.opened().at()) + ": " + words.of(seen.opened().content());
    } else if (seen.said() != null) {
      how += ", " + Days.day(seen.said().at()) + " · " + seen.said().who();
    }
    return new FastenerLine(
        Capital.of(seen.adjuster().name()) + ": " + seen.adjuster().kind().fastener(),
        how,
        seen.torque() == null ? "" : "torque " + seen.torque(),
        seen.open(),
        "/corners/" + seen.corner() + "/fasteners/" + seen.adjuster().adjuster(),
        FormKey.fresh(n));
  }
}
