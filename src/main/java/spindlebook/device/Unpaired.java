package spindlebook.device;

import spindlebook.page.PageFrame;

/**
 * What a device without a place in the book is told, with the ways to get one below it.
 *
 * @param sentence what is wrong
 */
public record Unpaired(PageFrame frame, String sentence) {
  static final Unpaired PAGE =
      of("This device is not paired", "The book opens on devices that were paired with it.");

  /** One sentence for both: who guesses should not learn which. */
  static final Unpaired NO_SUCH_CODE =
      of(
          "That code pairs nothing any more",
          "It has been used by another device, or its five minutes are over.");

  private static Unpaired of(String heading, String sentence) {
    return new Unpaired(PageFrame.of(heading + " · Spindlebook", heading), sentence);
  }
}
