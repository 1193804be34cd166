package spindlebook.web;

import java.net.InetAddress;
import java.net.URI;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Where the book listens, and under which names it may be asked for beside its own addresses.
 *
 * @param bind the address listened on; null for all of this machine's
 * @param port 0 takes any free one
 * @param names host names that lead to this machine, in small letters
 * @param publicHost host and port of the https address that a proxy in front answers to; null
 *     without one
 */
public record Listening(String bind, int port, List<String> names, Authority publicHost) {
  private static final String LOOPBACK = "127.0.0.1";
  private static final int HTTPS = 443;

  public Listening {
    names = List.copyOf(names);
  }

  /** On this machine only. */
  public static Listening here(int port) {
    return new Listening(LOOPBACK, port, List.of(), null);
  }

  /**
   * As it is said on the command line.
   *
   * @throws IllegalArgumentException with one sentence for the terminal
   */
  public static Listening of(String listen, int port, List<String> names, String publicAddress) {
    return new Listening(
        bind(listen.strip()),
        port,
        names.stream().map(Listening::name).toList(),
        publicAddress == null || publicAddress.isBlank() ? null : publicHost(publicAddress));
  }

  private static String bind(String listen) {
    if (listen.equals("lan")) {
      return null;
    }
    if (listen.equals("here")) {
      return LOOPBACK;
    }
    Optional<InetAddress> address =
        Authority.of(listen.contains(":") && !listen.startsWith("[") ? "[" + listen + "]" : listen)
            .filter(a -> a.port() < 0)
            .flatMap(Authority::address);
    if (address.isEmpty()) {
      throw new IllegalArgumentException(
          "'" + listen + "' cannot be listened on: say lan, here or an IP address.");
    }
    return address.get().isAnyLocalAddress() ? null : address.get().getHostAddress();
  }

  private static String name(String name) {
    return Authority.of(name.strip())
        .filter(a -> a.port() < 0)
        .map(Authority::host)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "'" + name + "' is no host name; a name looks like garage.lan."));
  }

  private static Authority publicHost(String address) {
    try {
      URI uri = URI.create(address.strip().toLowerCase(Locale.ROOT));
      boolean plain = uri.getRawPath().isEmpty() || uri.getRawPath().equals("/");
      if ("https".equals(uri.getScheme()) && plain && uri.getRawUserInfo() == null) {
        Authority host = Authority.of(uri.getRawAuthority()).orElseThrow();
        return new Authority(host.host(), host.port() == HTTPS ? -1 : host.port());
      }
    } catch (RuntimeException notOne) {
      // Said below, as for any other address that will not do.
    }
    throw new IllegalArgumentException(
        "'" + address + "' is no public address; one looks like https://book.example.org.");
  }

  /** The public address, empty without one. */
  Optional<String> publicOrigin() {
    return Optional.ofNullable(publicHost).map(host -> "https://" + host);
  }

  boolean isPublic(Authority asked) {
    return publicHost != null
        && asked.host().equals(publicHost.host())
        && asked.portOr(HTTPS) == publicHost.portOr(HTTPS);
  }
}
