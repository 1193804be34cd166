package spindlebook;

import java.nio.file.Path;
import java.time.Clock;
import java.util.function.Consumer;

/** The demo car, played into a throw-away book through the real writer. */
final class DemoCar {
  private DemoCar() {}

  static void play(Path folder, Clock now, Consumer<String> tell) {
    throw new IllegalStateException(folder + " " + now + " " + tell);
  }
}
