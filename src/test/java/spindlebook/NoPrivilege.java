package spindlebook;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** For programs that must not write where their owner may not, whoever runs the tests. */
public final class NoPrivilege {
  private NoPrivilege() {}

  /**
   * What to put before a command that shall be bound by the permissions of files.
   *
   * @param shut a folder that nobody may write
   */
  public static List<String> over(Path shut) {
    return Files.isWritable(shut)
        ? List.of("setpriv", "--bounding-set=-all", "--inh-caps=-all")
        : List.of();
  }
}
