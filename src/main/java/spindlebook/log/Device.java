package spindlebook.log;

import java.util.Objects;

/** The phone or other screen an entry was sent from. */
public record Device(String id, String name) {
  public Device {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(name, "name");
  }
}
