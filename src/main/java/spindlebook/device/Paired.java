package spindlebook.device;

import java.time.Instant;
import spindlebook.log.Device;
import spindlebook.log.Sender;

/**
 * One paired device.
 *
 * @param id made when it was paired
 * @param keeps whether it keeps the book; else it may only look
 * @param seen when it was last here, as far as was written down
 * @param tokenHash SHA-256 of what its cookie holds, in small hex letters
 */
record Paired(
    String id, String name, boolean keeps, Instant added, Instant seen, String tokenHash) {
  static final int LONGEST_NAME = 40;

  Paired named(String other) {
    return new Paired(id, other, keeps, added, seen, tokenHash);
  }

  Paired seenAt(Instant at) {
    return new Paired(id, name, keeps, added, at, tokenHash);
  }

  /** As the book names who sent an entry. */
  Sender sender() {
    return new Sender(new Device(id, name), keeps);
  }

  String may() {
    return keeps ? "keeps the book" : "may only look";
  }
}
