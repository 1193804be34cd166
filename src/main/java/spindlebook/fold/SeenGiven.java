package spindlebook.fold;

import java.util.List;
import spindlebook.definition.Given;

/**
 * A given length as the card sees it.
 *
 * @param stands stale once the part it was measured on was changed
 * @param because the changes that moved it since
 */
public record SeenGiven(Given given, Standing stands, List<Change> because) {
  public SeenGiven {
    because = List.copyOf(because);
  }
}
