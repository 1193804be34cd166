package spindlebook.entry;

/** A figure of what carries a corner, ends its motion softly, or of how its strap lasts. */
public enum SpringFigure {
  CORNER_WEIGHT("corner weight on the ground", Unit.WEIGHT),
  SPRUNG_WEIGHT("weight on the spring", Unit.WEIGHT),
  WHEEL_RATE("rate at the wheel, at ride", Unit.RATE),
  SITS_AT("ride by the spring, spindle from the frame mark", Unit.LENGTH),
  FREQUENCY("bounces at ride", Unit.HERTZ),
  SAG("sag, from where the spring is loose", Unit.LENGTH),
  DROOP_SHARE("droop of the travel", Unit.PER_CENT),
  COLLAR("collar, to sit where wanted", Unit.LENGTH),
  COIL_LEFT("coil left at full bump", Unit.LENGTH),
  RATIO_AT_DROOP("motion ratio, at full droop", Unit.RATIO),
  RATIO_AT_RIDE("motion ratio, at ride", Unit.RATIO),
  RATIO_AT_BUMP("motion ratio, at full bump", Unit.RATIO),
  STROKE_USED("shock stroke used", Unit.LENGTH),
  STROKE_NEEDED("shock stroke needed", Unit.LENGTH),
  LEFT_OPEN("shock left when open", Unit.LENGTH),
  LEFT_CLOSED("shock left when closed", Unit.LENGTH),
  STOP_CRUSH("bump stop pressed in, landing", Unit.LENGTH),
  STOP_FORCE("bump stop pushes, landing", Unit.FORCE),
  WHEEL_FORCE("force on the wheel, landing", Unit.FORCE),
  STOP_MEETS("energy left for the bump stop at full bump", Unit.ENERGY),
  STOP_TAKES("energy the bump stop takes by full bump", Unit.ENERGY),
  STRAP_GROWTH("strap has grown", Unit.LENGTH),
  STRAP_EARLY("strap used up, at the earliest", Unit.USE),
  STRAP_LATE("strap used up, at the latest", Unit.USE);

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

  private final String words;
  private final Unit unit;

  SpringFigure(String words, Unit unit) {
    this.words = words;
    this.unit = unit;
  }

  public String words() {
    return words;
  }

  public Unit unit() {
    return unit;
  }
}
