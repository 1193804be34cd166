package spindlebook.definition;

import java.util.Objects;
import java.util.stream.Stream;

/** What is no longer asked for, by its short name; the other two are null. */
public record Retired(String watchPoint, String adjuster, String tool) implements Defined {
  @Override
  public boolean ofCar() {
    return tool != null;
  }

  @Override
  public String inWords() {
    return "retired "
        + Stream.of(watchPoint, adjuster, tool)
            .filter(Objects::nonNull)
            .findFirst()
            .orElse("nothing");
  }
}
