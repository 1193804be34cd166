package spindlebook.card;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import spindlebook.definition.Layout;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.HeightName;
import spindlebook.entry.Pairing;
import spindlebook.entry.Quantity;
import spindlebook.entry.Steering;
import spindlebook.fold.Card;
import spindlebook.page.Posted;

/** What a new round is to read, as it stands in the round's address: {@code need=ride~straight}. */
public final class ToReadAddress {
  public static final String NEED = "need";
  private static final String BETWEEN = "~";

  /** What a round asks a height to be called, the height's form takes. */
  public static final int LONGEST_LABEL = 120;

  private ToReadAddress() {}

  /** The address of a new round that asks exactly for these. */
  public static String newRound(String corner, List<ToRead> toRead) {
    return "/corners/"
        + corner
        + "/rounds/new?"
        + toRead.stream()
            .map(t -> NEED + "=" + URLEncoder.encode(word(t), StandardCharsets.UTF_8))
            .collect(Collectors.joining("&"));
  }

  /** {@code in-between~full-left~watch-point~tyre-frame~at −4 in}; what is absent stays empty. */
  public static String word(ToRead t) {
    return String.join(
        BETWEEN,
        Posted.word(t.name()),
        Posted.word(t.steering()),
        t.quantity() == null ? "" : Posted.word(t.quantity()),
        t.point() == null ? "" : t.point(),
        t.pairing() == null
            ? t.label() == null ? "" : t.label()
            : (t.label() == null ? "" : t.label()) + BETWEEN + Posted.word(t.pairing()));
  }

  /** Empty when the word names nothing that can be read on this corner. */
  public static Optional<ToRead> read(Card card, String word) {
    String[] parts = Arrays.copyOf(word.split(BETWEEN, 5), 5);
    HeightName name = Posted.named(parts[0], HeightName.class, null);
    Steering steering = Posted.named(parts[1], Steering.class, null);
    Quantity quantity = Posted.named(parts[2], Quantity.class, null);
    String point = quantity == Quantity.WATCH_POINT ? parts[3] : null;
    // A label is in somebody's words, which may hold the sign that stands between.
    String rest = parts[4] == null ? "" : parts[4];
    int last = rest.lastIndexOf(BETWEEN);
    Pairing said = last < 0 ? null : Posted.named(rest.substring(last + 1), Pairing.class, null);
    String words = said == null ? rest : rest.substring(0, last);
    String label = words.isBlank() ? null : words;
    Pairing pairing =
        card.layout() == Layout.SOLID_AXLE_END && said == Pairing.CROSSED ? Pairing.CROSSED : null;
    boolean none = parts[2] == null || parts[2].isEmpty();
    boolean whole = name != null && steering != null && (quantity != null || none);
    boolean watched =
        quantity != Quantity.WATCH_POINT || (point != null && card.watchPoint(point).isPresent());
    boolean brief = label == null || label.length() <= LONGEST_LABEL;
    return whole && watched && brief
        ? Optional.of(new ToRead(name, label, steering, quantity, point, pairing))
        : Optional.empty();
  }
}
