package spindlebook.units;

import java.math.BigDecimal;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A spring rate, a force or a mass as typed with its unit, and if need be with its ±: {@code 350
 * lb/in}, {@code 1146 ± 20 lb}.
 *
 * @param typed as it is kept, with its unit
 * @param amount a decimal number, counted in {@code unit}
 * @param within half the width it may lie in; 0 where nobody said
 */
public record TypedAmount(String typed, double amount, double within, AmountUnit unit) {
  private static final String NUMBER = "(-?\\d{1,9}(?:\\.\\d{1,20})?(?:[eE]-?\\d{1,2})?)";
  private static final Pattern TEXT =
      Pattern.compile(NUMBER + "(?:\\s*(?:±|\\+/-|\\+-)\\s*" + NUMBER + ")?\\s*([A-Za-z/]*)");
  private static final Pattern NUMERAL = Pattern.compile("\\d[\\d.,]*");

  public TypedAmount {
    Objects.requireNonNull(typed, "typed");
    Objects.requireNonNull(unit, "unit");
    if (!Double.isFinite(amount) || !(within >= 0)) {
      throw new IllegalArgumentException("'" + typed + "' is not a number and its ±");
    }
  }

  /** Empty when it is no number with a unit; {@code bare} is the unit of a number without one. */
  public static Optional<TypedAmount> read(String text, AmountUnit bare) {
    Matcher matcher = TEXT.matcher(text.strip());
    if (!matcher.matches()) {
      return Optional.empty();
    }
    AmountUnit unit = matcher.group(3).isEmpty() ? bare : unit(matcher.group(3));
    double amount = Double.parseDouble(matcher.group(1));
    double within = matcher.group(2) == null ? 0 : Double.parseDouble(matcher.group(2));
    if (unit == null || within < 0) {
      return Optional.empty();
    }
    String typed = text.strip() + (matcher.group(3).isEmpty() ? " " + unit.word() : "");
    return Optional.of(new TypedAmount(typed, amount, within, unit));
  }

  /**
   * The same as a person types it, with commas: {@code 1,100 lb} is eleven hundred, as pounds are
   * written, {@code 11,5 N/mm} eleven and a half; {@code 1,250 kg} may be either and is asked back.
   * Kept is the number without its comma.
   */
  public static TextRead<TypedAmount> typed(String text, AmountUnit bare) {
    Set<TypedAmount> meanings = new LinkedHashSet<>();
    for (boolean thousands : new boolean[] {false, true}) {
      read(NUMERAL.matcher(text).replaceAll(n -> plain(n.group(), thousands)), bare)
          .filter(amount -> amount.unit.rate() == bare.rate() && amount.amount >= 0)
          .ifPresent(meanings::add);
    }
    List<TypedAmount> all = List.copyOf(meanings);
    if (all.isEmpty()) {
      return new TextRead.Refused<>(
          Quote.of(text)
              + " is not read here: type a number, "
              + (bare.rate() ? "in lb/in or N/mm." : "in lb, kg or N."));
    }
    TypedAmount last = all.get(all.size() - 1);
    boolean pounds = last.unit == AmountUnit.POUND || last.unit == AmountUnit.LB_PER_IN;
    return all.size() == 1 || pounds ? new TextRead.Value<>(last) : new TextRead.TwoMeanings<>(all);
  }

  private static String plain(String numeral, boolean thousands) {
    try {
      List<BigDecimal> values = Numeral.values(numeral);
      return values.get(thousands ? values.size() - 1 : 0).toPlainString();
    } catch (Unreadable none) {
      return numeral;
    }
  }

  private static AmountUnit unit(String word) {
    for (AmountUnit unit : AmountUnit.values()) {
      if (word.equalsIgnoreCase(unit.word()) || word.equalsIgnoreCase(unit.word() + "s")) {
        return unit;
      }
    }
    return word.equalsIgnoreCase("lbf") ? AmountUnit.POUND : null;
  }

  /**
   * N/mm of a rate, N of a weight or force.
   *
   * @throws IllegalArgumentException when it is the other, or below nothing
   */
  public double si(boolean rate) {
    if (unit.rate() != rate || amount < 0) {
      throw new IllegalArgumentException(
          "'" + typed + "' is not a " + (rate ? "rate in lb/in or N/mm" : "weight in lb, kg or N"));
    }
    return amount * unit.si();
  }

  /** The same of its ±. */
  public double siWithin() {
    return within * unit.si();
  }
}
