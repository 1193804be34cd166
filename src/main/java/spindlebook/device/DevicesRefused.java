package spindlebook.device;

/** The list of paired devices cannot be read or written; says so in one clear sentence. */
public final class DevicesRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  DevicesRefused(String sentence, Throwable cause) {
    super(sentence, cause);
  }
}
