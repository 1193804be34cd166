package spindlebook.device;

import spindlebook.page.Asked;

/** A device's name as somebody types it. */
final class DeviceName {
  private DeviceName() {}

  /** The name, or null with what is wrong with it. */
  static String ask(Asked a, String hint, String usual) {
    String name =
        a.line("name", "Called", Paired.LONGEST_NAME)
            .hint(hint)
            .was(usual)
            .needed("The device needs a name, such as phone.");
    return name == null ? null : name.replaceAll("\\p{Cntrl}", " ");
  }
}
