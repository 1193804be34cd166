package spindlebook.entry;

/** A figure of what carries a corner, ends its motion softly, or of how its strap lasts. */
public enum SpringFigure {
  CORNER_WEIGHT(Of.WEIGHT, "corner weight on the ground", Unit.WEIGHT),
  SPRUNG_WEIGHT(Of.WEIGHT, "weight on the spring", Unit.WEIGHT),
  WHEEL_RATE(Of.SPRING, "rate at the wheel, at ride", Unit.RATE),
  SITS_AT(Of.SPRING, "ride by the spring, spindle from the frame mark", Unit.LENGTH),
  FREQUENCY(Of.SPRING, "bounces at ride", Unit.HERTZ),
  SAG(Of.SPRING, "sag, from where the spring is loose", Unit.LENGTH),
  DROOP_SHARE(Of.SPRING, "droop of the travel", Unit.PER_CENT),
  COLLAR(Of.SPRING, "collar, to sit where wanted", Unit.LENGTH),
  COIL_LEFT(Of.SPRING, "coil left at full bump", Unit.LENGTH),
  RATIO_AT_DROOP(Of.SHOCK, "motion ratio, at full droop", Unit.RATIO),
  RATIO_AT_RIDE(Of.SHOCK, "motion ratio, at ride", Unit.RATIO),
  RATIO_AT_BUMP(Of.SHOCK, "motion ratio, at full bump", Unit.RATIO),
  STROKE_USED(Of.SHOCK, "shock stroke used", Unit.LENGTH),
  STROKE_NEEDED(Of.SHOCK, "shock stroke needed", Unit.LENGTH),
  LEFT_OPEN(Of.SHOCK, "shock left when open", Unit.LENGTH),
  LEFT_CLOSED(Of.SHOCK, "shock left when closed", Unit.LENGTH),
  STOP_CRUSH(Of.STOP, "bump stop pressed in, landing", Unit.LENGTH),
  STOP_FORCE(Of.STOP, "bump stop pushes, landing", Unit.FORCE),
  WHEEL_FORCE(Of.STOP, "force on the wheel, landing", Unit.FORCE),
  STOP_MEETS(Of.STOP, "energy left for the bump stop at full bump", Unit.ENERGY),
  STOP_TAKES(Of.STOP, "energy the bump stop takes by full bump", Unit.ENERGY),
  STRAP_GROWTH(Of.STRAP, "strap has grown", Unit.LENGTH),
  STRAP_EARLY(Of.STRAP, "strap used up, at the earliest", Unit.USE),
  STRAP_LATE(Of.STRAP, "strap used up, at the latest", Unit.USE);

  /** What it is counted in: mm, N/mm, Hz, N, J, kg; a length of shock for one of wheel. */
  public enum Unit {
    LENGTH,
    RATE,
    HERTZ,
    FORCE,
    ENERGY,
    WEIGHT,
    RATIO,
    PER_CENT,
    USE
  }

  /** What it is a figure of. */
  public enum Of {
    WEIGHT,
    SPRING,
    SHOCK,
    STOP,
    STRAP
  }

  private final Of of;
  private final String words;
  private final Unit unit;

  SpringFigure(Of of, String words, Unit unit) {
    this.of = of;
    this.words = words;
    this.unit = unit;
  }

  public Of of() {
    return of;
  }

  public String words() {
    return words;
  }

  public Unit unit() {
    return unit;
  }
}
