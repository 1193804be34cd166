package spindlebook.device;

import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** One-time codes; in memory only, so that a restart ends them all. */
public final class Codes {
  /** How long a code may be used. */
  static final Duration LIFE = Duration.ofMinutes(5);

  /** No I, L, O, 0 or 1: read off a screen they are taken for one another. */
  static final String LETTERS = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

  static final int TYPED_LENGTH = 8;
  private static final int LINK_BYTES = 16;
  private static final int MOST_OPEN = 32;

  private final Clock clock;
  private final List<Code> open = new ArrayList<>();

  public Codes(Clock clock) {
    this.clock = clock;
  }

  public synchronized Code fresh(boolean keeps) {
    dropOld();
    if (open.size() == MOST_OPEN) {
      open.remove(0);
    }
    Code code =
        new Code(
            Secrets.fresh(LINK_BYTES),
            Secrets.letters(LETTERS, TYPED_LENGTH),
            keeps,
            clock.instant().plus(LIFE));
    open.add(code);
    return code;
  }

  /** The code of a link, which stays open. */
  synchronized Optional<Code> ofLink(String link) {
    dropOld();
    return open.stream().filter(c -> Secrets.same(c.link(), link)).findFirst();
  }

  /** The code of what somebody typed, in capitals or not, with or without dash; it stays open. */
  synchronized Optional<Code> typed(String text) {
    dropOld();
    String plain = text.replaceAll("[\\s\\p{Pd}]", "").toUpperCase(Locale.ROOT);
    return open.stream().filter(c -> Secrets.same(c.typed(), plain)).findFirst();
  }

  /** Takes the code of a link out, so that of two who ask at once only one has it. */
  synchronized Optional<Code> take(String link) {
    Optional<Code> code = ofLink(link);
    code.ifPresent(open::remove);
    return code;
  }

  /** Puts a code back that was taken for nothing. */
  synchronized void putBack(Code code) {
    open.add(code);
  }

  synchronized void endAll() {
    open.clear();
  }

  private void dropOld() {
    open.removeIf(c -> !clock.instant().isBefore(c.until()));
  }
}
