package spindlebook.drawing;

/** Where a wheel stands in the plan view: front up, the driver's left on the left. */
public enum DrawnWheel {
  LEFT_FRONT("left front", 10, 24),
  RIGHT_FRONT("right front", 62, 24),
  LEFT_REAR("left rear", 9, 80),
  RIGHT_REAR("right rear", 63, 80);

  private final String word;
  private final int x;
  private final int y;

  DrawnWheel(String word, int x, int y) {
    this.word = word;
    this.x = x;
    this.y = y;
  }

  public String word() {
    return word;
  }

  /** Wheel centre across the drawing, drawing units to the right. */
  public int x() {
    return x;
  }

  /** Wheel centre along the drawing, drawing units downward, which is rearward. */
  public int y() {
    return y;
  }

  public boolean front() {
    return this == LEFT_FRONT || this == RIGHT_FRONT;
  }
}
