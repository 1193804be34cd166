package spindlebook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The program in a process of its own, so that it can be killed as a power cut would. */
final class ServedBook implements AutoCloseable {
  private static final Pattern LINK = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)(/pair/\\S+)");

  private final Path folder;
  private final Path terminal;
  private Process program;
  private int port;
  private String pairing;

  ServedBook(Path folder, Path terminal) throws IOException {
    this.folder = folder;
    this.terminal = terminal;
    start();
  }

  void start() throws IOException {
    program =
        new ProcessBuilder(command("--listen", "here", "--port", "0", "--data", folder.toString()))
            .redirectError(terminal.toFile())
            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
            .start();
    for (int i = 0; i < 1200 && program.isAlive(); i++) {
      String said = Files.readString(terminal);
      Matcher link = LINK.matcher(said);
      if (said.contains("It pairs one device.") && link.find()) {
        port = Integer.parseInt(link.group(1));
        pairing = link.group(2);
        return;
      }
      LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
    }
    throw new IllegalStateException("it did not start: " + Files.readString(terminal));
  }

  /** The program as it is called, with what makes it start soon and nothing that it would see. */
  static List<String> command(String... words) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx256m",
                "-cp",
                System.getProperty("java.class.path"),
                "spindlebook.Main"));
    command.addAll(List.of(words));
    return command;
  }

  int port() {
    return port;
  }

  /** SIGTERM, without waiting for the end. */
  Process tellToEnd() {
    program.destroy();
    return program;
  }

  /** The one-time link on its terminal. */
  String pairing() {
    return pairing;
  }

  /** SIGKILL: nothing is closed in order. */
  void kill() throws InterruptedException {
    program.destroyForcibly();
    program.waitFor();
  }

  /** Ctrl-C: closed in order. */
  void stop() throws InterruptedException {
    program.destroy();
    if (!program.waitFor(30, TimeUnit.SECONDS)) {
      throw new IllegalStateException("it did not stop");
    }
  }

  @Override
  public void close() throws InterruptedException {
    kill();
  }
}
