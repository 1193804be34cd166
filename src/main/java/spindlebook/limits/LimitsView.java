package spindlebook.limits;

import java.util.List;
import spindlebook.web.BladeDrawing;
import spindlebook.web.FigureText;
import spindlebook.web.Link;
import spindlebook.web.State;

/**
 * What limits a corner, end by end, and what to read next.
 *
 * @param positions what positions are counted from, one sentence
 * @param counts how many limits are in each state, worst first
 * @param next the most important first; empty when all is there, holds and is decided
 * @param nextMore how many more there are than are listed
 * @param leftOpen what nothing that is listed will settle, and why
 * @param nextTogether one round that reads all that is listed; null for fewer than two readings
 */
public record LimitsView(
    String corner,
    String positions,
    List<Count> counts,
    List<NextRow> next,
    int nextMore,
    List<String> leftOpen,
    String nextTogether,
    List<OneEnd> ends,
    List<MidRow> midTravel,
    List<LockRow> locks) {

  public record Count(State state, int of) {}

  /**
   * A reading to take, or a number to give.
   *
   * @param how how often or with what it has to be read; may be empty
   */
  public record NextRow(String what, String why, String how, String href) {}

  /**
   * The ladder of one end.
   *
   * @param cure the change of the stop that keeps every rule; may be empty
   * @param blades one for each motion in which a rung has a place: both together and crossed on a
   *     solid axle
   * @param none said in place of rungs that are not there; may be empty
   * @param kept rules kept as far as they were read
   * @param unknown what could act anywhere
   * @param readUnknown one round that reads all of those; null for fewer than two readings
   */
  public record OneEnd(
      String title,
      State state,
      String finding,
      String cure,
      String cureHref,
      List<Blade> blades,
      List<RungRow> rungs,
      String none,
      List<RungRow> kept,
      List<UnknownRow> unknown,
      String readUnknown) {}

  /**
   * One motion of an end, drawn.
   *
   * @param title how the ends of a solid axle stand; empty for a wheel hung alone
   */
  public record Blade(String title, BladeDrawing drawing) {}

  /**
   * One thing that ends the motion.
   *
   * @param number its place in the order of acting, as on the tape; 0 where it has none
   * @param state null for the stop
   * @param at null where it has no place
   * @param atNote where a bracket ends; may be empty
   * @param winsWord "up to", "at least", or what stands in place of a figure
   * @param wins null where no figure is told
   * @param told how it stands against the stop; may be empty
   * @param winning what curing it wins, in a sentence
   * @param curedBy what cures it
   * @param cures where that is looked at or set
   * @param readings what it rests on
   */
  public record RungRow(
      int number,
      String name,
      State state,
      FigureText at,
      String atNote,
      String winsWord,
      FigureText wins,
      String told,
      String winning,
      String curedBy,
      List<Link> cures,
      List<Link> readings) {}

  /**
   * A limit of which something is missing or no longer holds.
   *
   * @param name empty where what it needs says it
   */
  public record UnknownRow(String name, String needs, String href) {}

  /** A rule broken, or too close to call, between the ends. */
  public record MidRow(State state, String told, String cure, List<Link> cures) {}

  /** All that acts at one full lock. */
  public record LockRow(String title, List<String> told, Link stop) {}
}
