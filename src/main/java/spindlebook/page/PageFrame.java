package spindlebook.page;

import java.util.List;
import spindlebook.drawing.PlanView;
import spindlebook.drawing.State;

/** All that stands around a page; made for one answer, told by one chain of calls. */
public final class PageFrame {
  private final String title;
  private final String heading;
  private String sub = "";
  private Link up;
  private PlanView plan;
  private State state;
  private StepBand step;
  private Bar bar;
  private List<Notice> notices = List.of();
  private List<String> modules = List.of();
  private List<String> ownSheets = List.of();
  private String caution = "";

  private PageFrame(String title, String heading) {
    this.title = title;
    this.heading = heading;
  }

  /**
   * @param title the browser's title
   * @param heading the page's one heading; the step band speaks instead where there is one
   */
  public static PageFrame of(String title, String heading) {
    return new PageFrame(title, heading);
  }

  /** The line under the heading. */
  public PageFrame sub(String line) {
    sub = line;
    return this;
  }

  /** The page above this one. */
  public PageFrame up(String word, String href) {
    up = new Link(word, href);
    return this;
  }

  /** Which corner this is. */
  public PageFrame plan(PlanView view) {
    plan = view;
    return this;
  }

  /** What it comes to, beside the heading. */
  public PageFrame state(State worst) {
    state = worst;
    return this;
  }

  /** The measuring band, in the heading's place. */
  public PageFrame step(StepBand band) {
    step = band;
    return this;
  }

  /** The places at the foot. */
  public PageFrame bar(Bar places) {
    bar = places;
    return this;
  }

  /** Strips above the page, in order. */
  public PageFrame notices(List<Notice> strips) {
    notices = strips;
    return this;
  }

  /** The ES modules the page wants, in order. */
  public PageFrame modules(String... addresses) {
    modules = List.of(addresses);
    return this;
  }

  /** Stylesheets of this kind of page alone, after the common ones. */
  public PageFrame ownSheets(String... names) {
    ownSheets = List.of(names);
    return this;
  }

  /** The caution line at the foot. */
  public PageFrame caution(String line) {
    caution = line;
    return this;
  }

  /** The second stylesheet: a phone beside a car waits for no drawings and tables. */
  public String sheet() {
    return modules.contains("guide.js") ? "guide.css" : "book.css";
  }

  public String title() {
    return title;
  }

  public String heading() {
    return heading;
  }

  /** May be empty. */
  public String sub() {
    return sub;
  }

  /** The page above this one; null where there is none. */
  public Link up() {
    return up;
  }

  /** Null where no corner is meant. */
  public PlanView plan() {
    return plan;
  }

  /** Null where nothing is judged. */
  public State state() {
    return state;
  }

  /** Null on all pages but those of measuring. */
  public StepBand step() {
    return step;
  }

  /** Null where the page's own keys stand at the foot. */
  public Bar bar() {
    return bar;
  }

  public List<Notice> notices() {
    return notices;
  }

  public List<String> modules() {
    return modules;
  }

  public List<String> ownSheets() {
    return ownSheets;
  }

  /** May be empty. */
  public String caution() {
    return caution;
  }
}
