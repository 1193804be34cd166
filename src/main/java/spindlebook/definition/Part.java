package spindlebook.definition;

/** What a watch point lies between, so that a change of a part knows which readings it touches. */
public enum Part {
  UPPER_ARM,
  LOWER_ARM,
  TRAILING_ARM,
  AXLE,
  LINK,
  TANK,
  ROD_END,
  TIE_ROD,
  TOE_LINK,
  SPINDLE,
  WHEEL,
  TYRE,
  SHOCK,
  SPRING,
  FRAME,
  HOSE,
  UNIBALL,
  DRIVE_SHAFT
}
