package spindlebook.web;

import java.util.List;

/**
 * All that stands around a page.
 *
 * @param title the browser's title
 * @param heading the page's one heading; the step band speaks instead where there is one
 * @param sub the line under the heading; may be empty
 * @param crumbs the way back up, outermost first
 * @param plan which corner this is; null where no corner is meant
 * @param step the measuring band; null on all other pages
 * @param notices strips above the page, in order
 * @param modules addresses of the ES modules the page wants, in order
 * @param ownSheets stylesheets of this kind of page alone, after the common ones
 * @param caution the caution line at the foot; may be empty
 */
public record PageFrame(
    String title,
    String heading,
    String sub,
    List<Crumb> crumbs,
    PlanView plan,
    StepBand step,
    List<Notice> notices,
    List<String> modules,
    List<String> ownSheets,
    String caution) {
  /** The second stylesheet: a phone beside a car waits for no drawings and tables. */
  public String sheet() {
    return modules.contains("guide.js") ? "guide.css" : "book.css";
  }

  public static PageFrame of(String title, String heading) {
    return new PageFrame(
        title, heading, "", List.of(), null, null, List.of(), List.of(), List.of(), "");
  }

  public PageFrame sub(String line) {
    return new PageFrame(
        title, heading, line, crumbs, plan, step, notices, modules, ownSheets, caution);
  }

  public PageFrame crumbs(Crumb... way) {
    return new PageFrame(
        title, heading, sub, List.of(way), plan, step, notices, modules, ownSheets, caution);
  }

  public PageFrame plan(PlanView view) {
    return new PageFrame(
        title, heading, sub, crumbs, view, step, notices, modules, ownSheets, caution);
  }

  public PageFrame step(StepBand band) {
    return new PageFrame(
        title, heading, sub, crumbs, plan, band, notices, modules, ownSheets, caution);
  }

  public PageFrame notices(List<Notice> strips) {
    return new PageFrame(
        title, heading, sub, crumbs, plan, step, strips, modules, ownSheets, caution);
  }

  public PageFrame modules(String... addresses) {
    return new PageFrame(
        title, heading, sub, crumbs, plan, step, notices, List.of(addresses), ownSheets, caution);
  }

  public PageFrame ownSheets(String... names) {
    return new PageFrame(
        title, heading, sub, crumbs, plan, step, notices, modules, List.of(names), caution);
  }

  public PageFrame caution(String line) {
    return new PageFrame(
        title, heading, sub, crumbs, plan, step, notices, modules, ownSheets, line);
  }
}
