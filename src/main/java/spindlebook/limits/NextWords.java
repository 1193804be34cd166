package spindlebook.limits;

import java.util.List;
import spindlebook.advice.NextReading;
import spindlebook.card.Capital;
import spindlebook.card.Counted;
import spindlebook.card.NeedAddress;
import spindlebook.card.TravelWords;
import spindlebook.entry.Content.ToRead;
import spindlebook.entry.Quantity;
import spindlebook.travel.Need;
import spindlebook.travel.TravelFindings;

/** What to read next, why, how often, and where. */
public record NextWords(String corner, TravelFindings travel, TravelWords words) {

  public String href(NextReading next) {
    return NeedAddress.of(corner, words, next);
  }

  public String because(NextReading next) {
    return why(next) + decides(next) + since(next);
  }

  /**
   * Without why it is missing: "read tie rod to upper arm, full right, near −4 1/8 in from ride".
   */
  public String what(NextReading next) {
    if (next.need().dimension() != null) {
      return "give " + words.need(next.need());
    }
    Need need = next.need().bare();
    if (need.allowance() != null) {
      return "choose " + words.need(need);
    }
    return "read " + words.need(need) + where(next);
  }

  /** The same without where and how often, for a key. */
  String brief(NextReading next) {
    return next.need().toRead() == null ? what(next) : "read " + words.need(next.need().bare());
  }

  private String where(NextReading next) {
    ToRead read = next.need().toRead();
    if (next.nearMm() != null && next.need().noHigherThanMm() == null) {
      return ", near " + words.fromZero(next.nearMm());
    }
    boolean says = read.quantity() == null || next.need().noHigherThanMm() != null;
    boolean length =
        read.quantity() == Quantity.STRAP_LENGTH
            || read.quantity() == Quantity.SHOCK_LENGTH
            || read.quantity() == Quantity.STOP_GAP;
    return says || length ? label(read) : ", at '" + read.name().words() + "'" + label(read);
  }

  private static String label(ToRead read) {
    return read.label() == null ? "" : ", " + read.label();
  }

  private String why(NextReading next) {
    String end = next.end() == null ? "" : " at " + next.end().words();
    return switch (next.why()) {
      case WITHHOLDS ->
          next.withholds() > 1
              ? Counted.of(next.withholds(), "figure") + " wait for it" + end + "."
              : "A total or a margin waits for it" + end + ".";
      case UNDECIDED ->
          next.limit() == null
              ? "It is too close to call in mid-travel."
              : Capital.of(words.name(next.limit()))
                  + " cannot be told without it"
                  + stake(next)
                  + ".";
      case COSTS_TRAVEL ->
          "May win up to "
              + words.lengths().text(next.atStakeMm())
              + end
              + ": nobody looked between two heights of "
              + words.name(next.limit())
              + ".";
      case NO_SPLIT, UNSURE_WHERE_IT_RULES, UNSURE -> Capital.of(next.why().words()) + ".";
    };
  }

  /** What it decides besides what it is asked for. */
  private String decides(NextReading next) {
    List<String> others =
        next.decides().stream().filter(l -> !l.equals(next.limit())).map(words::name).toList();
    return others.isEmpty()
        ? ""
        : others.size() == 1
            ? " It should settle " + others.get(0) + "."
            : " It should settle " + Counted.of(others.size(), "limit") + ".";
  }

  private static String since(NextReading next) {
    List<String> because = next.need().because();
    return because.isEmpty() || next.need().dimension() != null
        ? ""
        : " Since: " + String.join("; ", because) + ".";
  }

  private String stake(NextReading next) {
    return next.atStakeMm() <= 0
        ? ""
        : ": the margin at "
            + next.end().words()
            + " could move by up to "
            + words.lengths().text(next.atStakeMm());
  }

  /** How often or with what it has to be read; may be empty. */
  public String how(NextReading next) {
    if (next.settles() == null) {
      return "";
    }
    return next.limit() != null
        ? words.settles(next.limit())
        : travel.midTravel().stream()
            .filter(m -> next.settles().equals(m.settles()))
            .findFirst()
            .map(words::settles)
            .orElse("");
  }
}
