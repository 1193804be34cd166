package spindlebook.page;

/**
 * One of the two big buttons at the bottom.
 *
 * @param word what it does, a verb first
 * @param href where it leads; null makes it the submit button of the form around it
 * @param name form name sent by a submit button; null for none
 * @param value form value sent by a submit button; null for none
 * @param main whether it is the thing to do here
 */
public record Action(String word, String href, String name, String value, boolean main) {
  public static Action link(String word, String href, boolean main) {
    return new Action(word, href, null, null, main);
  }

  public static Action submit(String word) {
    return new Action(word, null, null, null, true);
  }
}
