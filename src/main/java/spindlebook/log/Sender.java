package spindlebook.log;

/**
 * Who hands entries in.
 *
 * @param device as the book names it; null for the program itself
 * @param keeps whether it may write; else it may only look
 */
public record Sender(Device device, boolean keeps) {
  /** Where no request is answered: the demo, an import. */
  public static final Sender ITSELF = new Sender(null, true);
}
