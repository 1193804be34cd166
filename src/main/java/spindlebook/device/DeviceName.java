package spindlebook.device;

import spindlebook.web.Posted;

/** A device's name as somebody typed it. */
final class DeviceName {
  private DeviceName() {}

  /** The name, or null with what is wrong with it. */
  static String read(Posted posted) {
    String name =
        posted.neededLine("name", Paired.LONGEST_NAME, "The device needs a name, such as phone.");
    return name == null ? null : name.replaceAll("\\p{Cntrl}", " ");
  }
}
