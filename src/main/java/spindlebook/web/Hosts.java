package spindlebook.web;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The hosts this book answers to. Any other name that leads here was made by somebody else, so that
 * a page of theirs could read ours.
 */
public final class Hosts {
  private static final int HTTP = 80;
  private static final long LOOK_AGAIN_NANOS = Duration.ofSeconds(5).toNanos();

  private final Listening listening;
  private final String local = local();
  private volatile int port;
  private volatile Own own;

  /** Addresses of this machine, as they were a moment ago. */
  private record Own(List<InetAddress> addresses, long atNanos) {}

  public Hosts(Listening listening) {
    this.listening = listening;
    this.port = listening.port();
  }

  /** The port that is listened on, once it is known. */
  public void port(int taken) {
    this.port = taken;
  }

  /** The one Origin that pages under this Host have; empty when the Host is not ours. */
  public Optional<String> origin(String host) {
    Optional<Authority> asked = Authority.of(host);
    if (asked.isEmpty()) {
      return Optional.empty();
    }
    if (listening.isPublic(asked.get())) {
      return listening.publicOrigin();
    }
    boolean ours = asked.get().portOr(HTTP) == port && named(asked.get());
    return ours ? Optional.of(plain(asked.get().host())) : Optional.empty();
  }

  /** Whether who asks for this Host comes through the proxy that speaks https. */
  public boolean secure(String host) {
    return Authority.of(host).filter(listening::isPublic).isPresent();
  }

  private boolean named(Authority asked) {
    Optional<InetAddress> address = asked.address();
    if (address.isPresent()) {
      return address.get().isLoopbackAddress() || own().contains(address.get());
    }
    return asked.host().equals("localhost")
        || asked.host().equals(local)
        || listening.names().contains(asked.host());
  }

  /** The addresses to open on another device, the best first; then those for this machine alone. */
  public List<String> shown() {
    List<String> shown = new ArrayList<>();
    listening.publicOrigin().ifPresent(shown::add);
    if (listening.bind() == null) {
      listening.names().forEach(name -> shown.add(plain(name)));
      own().stream()
          .filter(a -> a.isSiteLocalAddress() && !a.isLoopbackAddress())
          .sorted(Comparator.comparing(a -> !(a instanceof Inet4Address)))
          .forEach(a -> shown.add(plain(withoutZone(a))));
      shown.add(plain("127.0.0.1"));
    } else {
      shown.add(plain(listening.bind()));
    }
    return shown;
  }

  /** The name this machine has on a network without a name server; empty where it has none. */
  private static String local() {
    try {
      String name = InetAddress.getLocalHost().getHostName();
      return name.toLowerCase(Locale.ROOT).replaceFirst("\\..*", "") + ".local";
    } catch (UnknownHostException nameless) {
      return "";
    }
  }

  private String plain(String host) {
    return "http://" + new Authority(host, port == HTTP ? -1 : port);
  }

  private static String withoutZone(InetAddress address) {
    return address.getHostAddress().replaceFirst("%.*", "");
  }

  private List<InetAddress> own() {
    Own known = own;
    if (known == null || System.nanoTime() - known.atNanos() > LOOK_AGAIN_NANOS) {
      known = new Own(look(), System.nanoTime());
      own = known;
    }
    return known.addresses();
  }

  private static List<InetAddress> look() {
    try {
      List<InetAddress> found = new ArrayList<>();
      for (NetworkInterface one : NetworkInterface.networkInterfaces().toList()) {
        if (one.isUp()) {
          one.inetAddresses().forEach(found::add);
        }
      }
      return found;
    } catch (SocketException noneToBeHad) {
      return List.of();
    }
  }
}
