package spindlebook.fold;

import java.util.List;
import spindlebook.entry.Content;

/**
 * One thing to be read again: it no longer holds, or was put back and not confirmed, and no other
 * reading of its place holds.
 *
 * @param stands STALE or PUT_BACK
 * @param because the changes that moved it
 */
public record ReadAgain(Content.ToRead toRead, Standing stands, List<Change> because) {
  public ReadAgain {
    because = List.copyOf(because);
  }
}
