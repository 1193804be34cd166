package spindlebook.fold;

import java.util.List;
import spindlebook.entry.Content;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.uncertainty.Figure;

/**
 * A height as the card sees it.
 *
 * @param positionMm wheel position: spindle minus frame mark, corrected, + towards bump; null when
 *     it is not known
 * @param markMm frame mark above the floor as it was read, there or at the height it was taken
 *     from, however many took it in between; null where it was not
 * @param stands LIVE, IN_DOUBT or OUTSIDE: whether the position itself counts
 * @param stop whether the height still says where its named place is
 * @param because the changes that moved the named place since
 */
public record SeenHeight(
    Noted entry,
    SeenRound round,
    Content.Height height,
    Figure positionMm,
    Double markMm,
    Standing stands,
    Standing stop,
    List<Change> because)
    implements OfEntry {

  public HeightName name() {
    return height.name();
  }

  /** Its name, with the owner's own words for a height in between. */
  public String words() {
    String label = height.label();
    String words =
        label == null || label.isBlank() ? name().words() : name().words() + ", " + said(label);
    return height.pairing() == null ? words : words + ", " + height.pairing().words();
  }

  /** A label as a screen says it: what a plan once wrote in other words stays as it was written. */
  public static String said(String label) {
    return label
        .replaceFirst("^where the strap ends up$", "strap at full stretch")
        .replaceFirst("^just before the strap ends up$", "just short of full stretch");
  }

  /** How the ends of a solid axle stood; both together when nothing else was said. */
  public Pairing pairing() {
    return height.pairing() == null ? Pairing.BOTH_TOGETHER : height.pairing();
  }

  /** The pairing as it is asked for: only crossed is said. */
  public Pairing asked() {
    return crossed() ? Pairing.CROSSED : null;
  }

  /** Whether one end of a solid axle was up and the other down. */
  public boolean crossed() {
    return pairing() == Pairing.CROSSED;
  }

  /** Where the wheel hangs on the strap; crossed, its other end holds it too. */
  public boolean onTheStrap() {
    return name() == HeightName.ON_THE_STRAP && !crossed();
  }

  public boolean positionCounts() {
    return stands.counts() && positionMm != null;
  }

  /** Whether the place it names is where it was read. */
  public boolean stopCounts() {
    return positionCounts() && stop.counts();
  }

  SeenHeight replaced() {
    return new SeenHeight(
        entry, round, height, positionMm, markMm, stands, Standing.REPLACED, because);
  }
}
