package spindlebook.device;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.UnaryOperator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The paired devices: a change is on the disk before it is said to be done. */
public final class Devices {
  private static final Logger LOG = LoggerFactory.getLogger(Devices.class);
  private static final int TOKEN_BYTES = 32;
  private static final String ID_LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";
  private static final Duration WRITE_SEEN_AFTER = Duration.ofDays(1);

  private final DeviceFile file;
  private final Clock clock;
  private final Map<String, Instant> seen = new ConcurrentHashMap<>();
  private volatile List<Paired> all;

  /**
   * Reads the devices of a book.
   *
   * @throws DevicesRefused when their file is damaged
   */
  public Devices(Path folder, Clock clock) {
    this.file = new DeviceFile(folder);
    this.clock = clock;
    this.all = file.read();
  }

  /** The devices in the order they were paired, each with when it was last here. */
  List<Paired> all() {
    return all.stream().map(d -> d.seenAt(seen.getOrDefault(d.id(), d.seen()))).toList();
  }

  Optional<Paired> byId(String id) {
    return all().stream().filter(d -> d.id().equals(id)).findFirst();
  }

  /** The device whose cookie this is; compares with every one, so that time tells nothing. */
  Optional<Paired> byToken(String token) {
    String hash = Secrets.hash(token);
    Paired found = null;
    for (Paired device : all) {
      if (Secrets.same(device.tokenHash(), hash)) {
        found = device;
      }
    }
    return Optional.ofNullable(found);
  }

  /** Notes that a device is here; written down with the next change, or when a day has gone by. */
  void here(Paired device) {
    Instant now = clock.instant();
    seen.put(device.id(), now);
    if (device.seen().plus(WRITE_SEEN_AFTER).isBefore(now)) {
      writeSeen();
    }
  }

  private void writeSeen() {
    try {
      change(d -> d);
    } catch (DevicesRefused fullDisk) {
      LOG.debug("when devices were last here is not written down this time", fullDisk);
    }
  }

  /** Pairs a new device; what comes back is all that its cookie holds. */
  synchronized String pair(String name, boolean keeps) {
    String token = Secrets.fresh(TOKEN_BYTES);
    Instant now = clock.instant();
    List<Paired> more = new ArrayList<>(all());
    more.add(
        new Paired(
            "d-" + Secrets.letters(ID_LETTERS, 8), name, keeps, now, now, Secrets.hash(token)));
    keep(more);
    return token;
  }

  void rename(String id, String name) {
    change(d -> d.id().equals(id) ? d.named(name) : d);
  }

  /** From the moment this returns its cookie opens nothing. */
  synchronized void revoke(String id) {
    keep(all().stream().filter(d -> !d.id().equals(id)).toList());
    seen.remove(id);
  }

  private synchronized void change(UnaryOperator<Paired> change) {
    keep(all().stream().map(change).toList());
  }

  private void keep(List<Paired> changed) {
    file.write(changed);
    all = List.copyOf(changed);
  }

  /** Writes down when each was last here. */
  public void close() {
    if (!seen.isEmpty()) {
      writeSeen();
    }
  }
}
