package spindlebook.align;

import spindlebook.uncertainty.Settles;

/** What would settle a can't-tell, as a sentence. */
final class SettledBy {
  private SettledBy() {}

  static String words(Settles how) {
    if (how instanceof Settles.Repeats r) {
      return "Reading each place " + r.n() + " times in all would settle it.";
    }
    if (how instanceof Settles.FinerTool) {
      return "A tool with finer steps would settle it, reading again would not.";
    }
    if (how instanceof Settles.RepeatsOrFinerTool r) {
      return "Reading each place " + r.n() + " times in all, or finer steps, would settle it.";
    }
    if (how instanceof Settles.RepeatsWithFinerTool r) {
      return "Finer steps and " + r.n() + " readings of each place would settle it.";
    }
    return "Reading it again will not settle it: it lies too near its limit.";
  }
}
