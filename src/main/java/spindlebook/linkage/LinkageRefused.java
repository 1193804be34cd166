package spindlebook.linkage;

import java.util.List;
import spindlebook.entry.Joint;

/** What was given is no corner; the message is one sentence for whoever gave it. */
public final class LinkageRefused extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final transient List<Joint> about;

  public LinkageRefused(String sentence, Joint... about) {
    super(sentence);
    this.about = List.of(about);
  }

  /** Where to look. */
  public List<Joint> about() {
    return about;
  }
}
