package spindlebook.log;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Instant;
import java.util.regex.Pattern;

/**
 * What a sender hands in: an entry without what only the book can give it.
 *
 * <p>A draft that could never become an entry cannot be made; {@link BookRefused} says why.
 *
 * @param key made by the sender; handing in the same key again stores nothing twice
 * @param after position of the last entry the sender knew of, 0 for none
 * @param origin where it stood before, null for a new one
 */
public record Draft(
    String key,
    String kind,
    int v,
    long after,
    String who,
    Device device,
    Instant claimed,
    JsonNode body,
    Origin origin) {
  static final Pattern KEY = Pattern.compile("[A-Za-z0-9._-]{1,80}");
  static final Pattern KIND = Pattern.compile("[a-z][a-z0-9-]{0,39}");

  public Draft {
    if (key == null || !KEY.matcher(key).matches()) {
      throw BookRefused.entry(
          "The key '%s' cannot be used: a key is 1 to 80 letters, digits, dots, dashes or"
              + " underscores.",
          BookRefused.shown(key));
    }
    if (kind == null || !KIND.matcher(kind).matches()) {
      throw BookRefused.entry(
          "'%s' is no kind of entry: a kind is up to 40 small letters, digits and dashes.",
          BookRefused.shown(kind));
    }
    if (v < 1) {
      throw BookRefused.entry("The version of entry %s is %d, but versions start at 1.", key, v);
    }
    if (after < 0) {
      throw BookRefused.entry("Entry %s claims to follow entry %d.", key, after);
    }
    if (who == null || who.isBlank()) {
      throw BookRefused.entry("Entry %s does not say who made it.", key);
    }
    if (body == null || !body.isObject()) {
      throw BookRefused.entry("The body of entry %s is not a JSON object.", key);
    }
  }

  /** A new one. */
  public Draft(
      String key,
      String kind,
      int v,
      long after,
      String who,
      Device device,
      Instant claimed,
      JsonNode body) {
    this(key, kind, v, after, who, device, claimed, body, null);
  }

  /**
   * The first key of an entry kept under one of its own, since its form was sent again with another
   * body; null of any other key.
   */
  public static String first(String key) {
    int at = key.indexOf(OwnKey.OTHER);
    return at < 0 ? null : key.substring(0, at);
  }

  /** The same, sent from a device, where it does not name one itself. */
  Draft from(Device sender) {
    return device != null || sender == null
        ? this
        : new Draft(key, kind, v, after, who, sender, claimed, body, origin);
  }

  /** The same, with when its sender says it was made; null when it says nothing. */
  public Draft claimed(Instant when) {
    return new Draft(key, kind, v, after, who, device, when, body, origin);
  }

  /** The same under another key, or with another body. */
  Draft as(String other, JsonNode said) {
    return new Draft(other, kind, v, after, who, device, claimed, said, origin);
  }
}
