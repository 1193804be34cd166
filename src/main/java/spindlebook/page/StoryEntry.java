package spindlebook.page;

import java.util.List;
import spindlebook.drawing.State;

/**
 * One line of the car's life.
 *
 * @param number position in the book, from 1
 * @param when date and time as shown
 * @param who who sent it; may be empty
 * @param kind "reading", "adjustment", "driven" …
 * @param text what happened, one sentence
 * @param notes what it did to other entries; may be empty
 * @param state how it stands now; null where states do not apply
 * @param href its own page; null when it has none
 */
public record StoryEntry(
    long number,
    String when,
    String who,
    String kind,
    String text,
    List<String> notes,
    State state,
    String href) {}
