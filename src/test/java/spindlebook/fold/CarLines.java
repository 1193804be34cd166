package spindlebook.fold;

/** The first lines of a small book, for tests that add their own. */
public final class CarLines {
  public static final String CAR =
      line("{'key':'car','kind':'car','body':{'details':{'name':'Dune'}}}");
  public static final String LF =
      line(
          "{'key':'lf','kind':'corner','body':{'car':'car','place':'left-front',"
              + "'layout':'steered-double-a-arm','watchPoints':[{'point':'tie',"
              + "'place':'tie-rod-upper-arm','name':'tie rod to arm','keep':{'least':'1/4 in'}}],"
              + "'adjusters':[{'adjuster':'upper','kind':'upper-rod-ends','name':'upper ends',"
              + "'unit':'turns','moreShortens':false,'first':'0 turns'}]}}");
  public static final String R1 =
      line(
          "{'key':'r1','kind':'round','body':{'corner':'lf','springIn':false,'bumpStopIn':true,"
              + "'wheelOn':false,'onTyres':false,'steeringLinked':true}}");

  private CarLines() {}

  public static String line(String single) {
    return single.replace('\'', '"');
  }

  public static String height(String key, String name, String spindle) {
    return line(
        "{'key':'"
            + key
            + "','kind':'height','body':{'round':'r1','name':'"
            + name
            + "','spindle':'"
            + spindle
            + "','mark':'20 1/2 in'}}");
  }

  public static String gap(String key, String height, String length) {
    return line(
        "{'key':'"
            + key
            + "','kind':'reading','body':{'height':'"
            + height
            + "','steering':'straight','quantity':'watch-point','point':'tie',"
            + "'result':'number','length':'"
            + length
            + "'}}");
  }

  public static String upper(String key, String to) {
    return line(
        "{'key':'"
            + key
            + "','kind':'adjustment','body':{'corner':'lf','adjuster':'upper','to':'"
            + to
            + "'}}");
  }
}
