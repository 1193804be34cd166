package spindlebook.linkage;

/** What was given is no corner; the message is one sentence for whoever gave it. */
public final class LinkageRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  LinkageRefused(String sentence) {
    super(sentence);
  }
}
