package spindlebook.web;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The host and port of an address as a browser writes them: {@code 192.168.1.20:8321}, {@code
 * garage.local}, {@code [::1]:8321}.
 *
 * @param host in small letters, an IPv6 address without its brackets
 * @param port -1 where none is written
 */
public record Authority(String host, int port) {
  private static final Pattern WRITTEN =
      Pattern.compile("(?:\\[([0-9a-f:.]{2,45})]|([a-z0-9][a-z0-9.-]{0,252}))(?::(\\d{1,5}))?");

  private static final Pattern IPV4 = Pattern.compile("\\d{1,3}(\\.\\d{1,3}){3}");

  /** Empty when it is no host and port. */
  public static Optional<Authority> of(String written) {
    Matcher m = WRITTEN.matcher(written.toLowerCase(Locale.ROOT));
    if (!m.matches()) {
      return Optional.empty();
    }
    String host = m.group(1) == null ? m.group(2) : m.group(1);
    if (m.group(1) != null && address(host).isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Authority(host, m.group(3) == null ? -1 : Integer.parseInt(m.group(3))));
  }

  /** The address the host stands for, where it is an address and not a name; asks nobody. */
  public Optional<InetAddress> address() {
    return address(host);
  }

  private static Optional<InetAddress> address(String host) {
    if (!host.contains(":") && !IPV4.matcher(host).matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(host.contains(":") ? "[" + host + "]" : host));
    } catch (UnknownHostException notOne) {
      return Optional.empty();
    }
  }

  public int portOr(int usual) {
    return port < 0 ? usual : port;
  }

  @Override
  public String toString() {
    String shown = host.contains(":") ? "[" + host + "]" : host;
    return port < 0 ? shown : shown + ":" + port;
  }
}
