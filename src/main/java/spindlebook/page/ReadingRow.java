package spindlebook.page;

import spindlebook.drawing.State;

/**
 * One quantity to be read at the height in hand.
 *
 * @param field the box and its one-tap keys (well clear, touches, binds, not looked)
 * @param rule "keep at least 1/4 in"; may be empty
 * @param last "last time 3/16 in, 9 Oct, before the strap"; may be empty
 * @param state how the reading stands now; null before it is read
 */
public record ReadingRow(Field field, String rule, String last, State state) {}
