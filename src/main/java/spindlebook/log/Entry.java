package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.Objects;

/**
 * One line of the book.
 *
 * @param n position in the book, from 1
 * @param at the server's time when it was written; null only in a book written by hand
 * @param claimed the sender's time, null if none: it describes, nothing is ordered by it
 * @param who who says so
 * @param device what it was sent from, null for the command line
 * @param key made by the sender; the id of the thing for ever
 * @param kind what the body is about
 * @param v version of the kind's body
 * @param after position of the last entry the sender knew of
 * @param forced highest position known to be on the disk when this line was written
 * @param prev SHA-256 in hex of the line before, null only in a book written by hand
 * @param body what was said
 * @param origin where an imported entry stood before, else null
 */
public record Entry(
    long n,
    Instant at,
    Instant claimed,
    String who,
    Device device,
    String key,
    String kind,
    int v,
    long after,
    long forced,
    String prev,
    JsonNode body,
    Origin origin) {
  public Entry {
    Objects.requireNonNull(who, "who");
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(body, "body");
  }
}
