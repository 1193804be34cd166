package spindlebook;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import spindlebook.device.Code;
import spindlebook.device.Qr;

/** What stands on the terminal once the book is open: where it is, and how to get in. */
final class Greeting {
  private Greeting() {}

  static void print(PrintStream terminal, Path folder, List<String> addresses, Code code) {
    terminal.println("The book in " + folder + " is open at");
    addresses.forEach(address -> terminal.println("  " + address + "/"));
    terminal.println();
    terminal.println("To pair a device, within five minutes, open there");
    addresses.forEach(address -> terminal.println("  " + address + code.path()));
    terminal.println("or type the code " + code.spoken() + " at /pair, or scan");
    terminal.println();
    terminal.print(new Qr(addresses.get(0) + code.path()).blocks());
    terminal.println();
    terminal.println(
        "It pairs one device. The next ones: Devices, Pair another device; or restart.");
    terminal.flush();
  }
}
