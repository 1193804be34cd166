package spindlebook.drawing;

import java.util.List;

/**
 * One corner on the car page: a name, the usable travel, a blade and what to do first.
 *
 * @param name "Left front"
 * @param href the corner's page
 * @param worst why it is the worst corner, a few words; empty for all others
 * @param state the worst state of the corner
 * @param usable usable travel as it could be; null when a term is missing
 * @param usableWord "of travel, limit to limit", or "needs full droop again" when there is no
 *     figure
 * @param finding what is wrong, one sentence
 * @param cure what cures it; may be empty
 * @param more lesser findings; may be empty
 */
public record CornerLine(
    String name,
    String href,
    PlanView plan,
    String worst,
    State state,
    FigureText usable,
    String usableWord,
    TapeBlade blade,
    String finding,
    String cure,
    List<String> more) {}
