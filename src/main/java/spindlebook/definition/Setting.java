package spindlebook.definition;

import java.util.Objects;

/**
 * What an adjuster is set to, as typed.
 *
 * @param amount millimetres for LENGTH, a count for HOLES and TURNS, null for WORDS
 */
public record Setting(String typed, SettingUnit unit, Double amount) {
  private static final double SAME_AMOUNT = 1e-6;

  public Setting {
    Objects.requireNonNull(typed, "typed");
    Objects.requireNonNull(unit, "unit");
    if ((amount == null) != (unit == SettingUnit.WORDS)) {
      throw new IllegalArgumentException(
          "a setting in " + unit.words() + " and its amount disagree");
    }
  }

  public static Setting words(String typed) {
    return new Setting(typed, SettingUnit.WORDS, null);
  }

  /** Whether the adjuster stands the same: by amount, or by words where there is none. */
  public boolean same(Setting other) {
    if (other == null || unit != other.unit) {
      return false;
    }
    return amount == null
        ? typed.strip().equalsIgnoreCase(other.typed.strip())
        : Math.abs(amount - other.amount) <= SAME_AMOUNT;
  }

  public String inWords() {
    return switch (unit) {
      case HOLES -> "hole " + typed;
      case TURNS -> typed + (typed.equals("1") ? " turn" : " turns");
      case LENGTH, WORDS -> typed;
    };
  }
}
