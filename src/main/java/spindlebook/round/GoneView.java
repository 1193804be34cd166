package spindlebook.round;

import spindlebook.card.PutBack;

/**
 * A height that is no longer on its corner's card, at its own address.
 *
 * @param words what it said
 * @param why why it does not count
 * @param kept a reading that came too late; empty when there is none
 * @param putBack null when it was not taken back but answered away
 * @param roundHref null when its round is gone as well
 */
public record GoneView(
    String words, String why, String kept, PutBack putBack, String entryHref, String roundHref) {}
