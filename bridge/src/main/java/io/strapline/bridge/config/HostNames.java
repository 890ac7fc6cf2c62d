package io.strapline.bridge.config;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import java.util.regex.Pattern;

/** Judges addresses and host names by their text alone: no name is looked up. Stateless. */
final class HostNames {

  private static final Pattern NUMERIC = Pattern.compile("[0-9.]+|[0-9A-Fa-f:.]*:[0-9A-Fa-f:.]*");

  private static final Pattern IP_V4 =
      Pattern.compile("((25[0-5]|2[0-4]\\d|1?\\d?\\d)\\.){3}(25[0-5]|2[0-4]\\d|1?\\d?\\d)");

  private static final Pattern NAME =
      Pattern.compile("(?=.{1,253}$)[A-Za-z0-9]([A-Za-z0-9-]{0,62})(\\.[A-Za-z0-9-]{1,63})*");

  private HostNames() {}

  /** Returns whether the text is an IP address or could be a host name. */
  static boolean isValid(String host) {
    return NUMERIC.matcher(host).matches()
        ? address(host).isPresent()
        : NAME.matcher(host).matches();
  }

  /**
   * Returns whether only this machine can reach the address; of names, localhost alone is known.
   */
  static boolean isLoopback(String host) {
    return address(host).map(InetAddress::isLoopbackAddress).orElse(host.equals("localhost"));
  }

  /** Returns whether two servers that listen on these hosts would meet on one port. */
  static boolean overlap(String a, String b) {
    return isWildcard(a) || isWildcard(b) || a.equals(b) || (isLoopback(a) && isLoopback(b));
  }

  private static boolean isWildcard(String host) {
    return address(host).map(InetAddress::isAnyLocalAddress).orElse(false);
  }

  /** Returns the address that a numeric text means; nothing is looked up. */
  static Optional<InetAddress> address(String host) {
    boolean numeric = host.contains(":") ? NUMERIC.matcher(host).matches() : isV4(host);
    try {
      return numeric ? Optional.of(InetAddress.getByName(host)) : Optional.empty();
    } catch (UnknownHostException malformed) {
      return Optional.empty();
    }
  }

  private static boolean isV4(String host) {
    return IP_V4.matcher(host).matches();
  }
}
