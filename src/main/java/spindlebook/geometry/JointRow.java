package spindlebook.geometry;

import spindlebook.drawing.State;

/**
 * A joint in the list of them.
 *
 * @param at as typed; empty while it is missing
 * @param state null where it counts
 */
public record JointRow(String key, String name, String at, State state, String href) {}
