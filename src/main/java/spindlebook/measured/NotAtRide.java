package spindlebook.measured;

/** Why what a round read at ride position is no alignment at ride. */
public enum NotAtRide {
  ON_STANDS("the car stood on stands"),
  SPRING_OUT("the spring was out"),
  WHEEL_OFF("the wheel was off"),
  NOT_SETTLED("nobody said that it was rolled and bounced since the jack"),
  STEERING_FREE("the steering was not linked"),
  NO_ANGLE("it is a length, and nobody gave across what, for this wheel or the other"),
  TOO_LONG("it is a length, and longer than what it is across");

  private final String words;

  NotAtRide(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
