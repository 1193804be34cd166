package spindlebook.align;

import java.util.Optional;
import spindlebook.align.BumpSteerView.Shim;

/** A shim under the outer tie-rod end, as it was tried, in words. */
record ShimWords(ToeWords words) {

  Shim shim(Optional<ShimTrial.Tried> last) {
    if (last.isEmpty()) {
      return new Shim(
          null,
          "None was tried. Change the shim under the outer tie-rod end by a known thickness, put"
              + " that in the book, set toe at ride again and read toe along the travel: this page"
              + " then says how much more takes the slope out. Whether more shim lifts the end or"
              + " lowers it depends on which side of the steering arm it sits.",
          null);
    }
    ShimTrial.Tried tried = last.get();
    return new Shim(
        tried.moreMm().map(words.lengths()::signedFigure).orElse(null), said(tried), tried.entry());
  }

  private String said(ShimTrial.Tried tried) {
    String by = words.lengths().signedText(tried.upMm());
    if (tried.before() == null || tried.after() == null) {
      return by
          + " was tried. To say how much more, toe at three places or more and ride height are"
          + " needed "
          + (tried.before() == null ? "from before it; they were not read then." : "since it.");
    }
    String slopes =
        by
            + " took the slope from "
            + words.slopeWords(tried.before())
            + " to "
            + words.slopeWords(tried.after())
            + ".";
    return tried.moreMm().isEmpty()
        ? slopes + " That change is within its ±: try a thicker one, or read toe again."
        : slopes
            + " + is more shim, − is less. Taken as a straight line; set toe at ride again, then"
            + " read.";
  }
}
