package spindlebook.fold;

import java.util.List;
import spindlebook.definition.Given;
import spindlebook.definition.Place;

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

  /**
   * With what its writer knew of.
   *
   * @param after the last change of a setting that the writer knew of
   */
  record Then(Given given, long after) {
    SeenGiven seen(Place place, Settings settings) {
      Settings.Verdict verdict = settings.judge(place, after, subject());
      return new SeenGiven(given, verdict.stands(), verdict.because());
    }

    /** Whether it and a height read with knowledge up to {@code heightAfter} are of one part. */
    boolean sameEra(Place place, Settings settings, long heightAfter) {
      return settings.era(place, after, subject()) == settings.era(place, heightAfter, subject());
    }

    private Subject subject() {
      return new Subject.GivenLength(given.dimension());
    }
  }
}
