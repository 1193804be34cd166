package spindlebook.device;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import spindlebook.log.Json;
import spindlebook.log.WholeFile;

/**
 * {@code devices.json}, beside the book and never in it: what takes the book's copy back does not
 * let a revoked device in again. It holds no token, only what a token is recognised by.
 */
final class DeviceFile {
  static final String NAME = "devices.json";
  private static final int VERSION = 1;

  private final Path file;

  DeviceFile(Path folder) {
    this.file = folder.resolve(NAME);
  }

  /**
   * All devices; none where there is no file yet.
   *
   * @throws DevicesRefused when it cannot be read; it is then left as it is
   */
  List<Paired> read() {
    if (!Files.exists(file)) {
      return List.of();
    }
    try {
      return read(Json.read(Files.readAllBytes(file)));
    } catch (IOException | IllegalArgumentException | DateTimeException trouble) {
      throw new DevicesRefused(
          "The list of paired devices "
              + file
              + " is damaged and was left as it is: put a copy of it back, or move it away and pair"
              + " the devices again.",
          trouble);
    }
  }

  private List<Paired> read(JsonNode all) throws IOException {
    if (all.path("v").asInt() > VERSION) {
      throw new DevicesRefused(
          "The list of paired devices "
              + file
              + " was written by a newer version of this program; start that one.",
          null);
    }
    List<Paired> devices = new ArrayList<>();
    Set<String> ids = new HashSet<>();
    if (all.path("v").asInt() != VERSION || !all.path("devices").isArray()) {
      throw new IOException("no list of devices in it");
    }
    for (JsonNode one : all.path("devices")) {
      Paired device =
          new Paired(
              text(one, "id"),
              text(one, "name"),
              keeps(text(one, "may")),
              Instant.parse(text(one, "added")),
              Instant.parse(text(one, "seen")),
              text(one, "token-sha256"));
      if (!ids.add(device.id()) || !device.tokenHash().matches("[0-9a-f]{64}")) {
        throw new IOException("a device in it cannot be one");
      }
      devices.add(device);
    }
    return devices;
  }

  private static boolean keeps(String may) throws IOException {
    return switch (may) {
      case "keep" -> true;
      case "look" -> false;
      default -> throw new IOException("what a device may do is not said");
    };
  }

  private static String text(JsonNode one, String name) throws IOException {
    JsonNode text = one.path(name);
    if (!text.isTextual() || text.asText().isBlank()) {
      throw new IOException("a device has no " + name);
    }
    return text.asText();
  }

  /**
   * @throws DevicesRefused when the disk did not take it
   */
  void write(List<Paired> devices) {
    ObjectNode all = Json.MAPPER.createObjectNode().put("v", VERSION);
    for (Paired device : devices) {
      all.withArray("devices")
          .addObject()
          .put("id", device.id())
          .put("name", device.name())
          .put("may", device.keeps() ? "keep" : "look")
          .put("added", device.added().toString())
          .put("seen", device.seen().toString())
          .put("token-sha256", device.tokenHash());
    }
    all.withArray("devices");
    try {
      WholeFile.put(file, Json.MAPPER.writerWithDefaultPrettyPrinter().writeValueAsBytes(all));
    } catch (IOException trouble) {
      throw new DevicesRefused(
          "The disk did not take the list of devices; nothing was changed, try it again.", trouble);
    }
  }
}
