package io.strapline.bridge.publish.opcua.security;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * The names that a server's certificate carries. Immutable.
 *
 * @param plant name of the plant
 * @param hosts host names and addresses under which clients reach the server
 */
public record CertificateNames(String plant, List<String> hosts) {

  private static final Pattern IPV4 = Pattern.compile("\\d{1,3}(\\.\\d{1,3}){3}");

  /** Copies the list, without repeats. */
  public CertificateNames {
    hosts = List.copyOf(new LinkedHashSet<>(hosts));
  }

  /**
   * Returns the names of a server that listens on {@code listenHost}.
   *
   * @param advertised further names and addresses
   */
  public static CertificateNames of(String plant, String listenHost, List<String> advertised) {
    Set<String> hosts = new LinkedHashSet<>();
    hosts.add(listenHost);
    hosts.addAll(advertised);
    hosts.add("localhost");
    hosts.add(machineName());
    hosts.removeIf(CertificateNames::isWildcard);
    return new CertificateNames(plant, List.copyOf(hosts));
  }

  /** Returns whether the host stands for all addresses of the machine. */
  public static boolean isWildcard(String host) {
    return host.equals("0.0.0.0") || host.equals("::") || host.equals("[::]");
  }

  /** Returns the name of this machine, {@code localhost} when it has none. */
  public static String machineName() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException nameless) {
      return "localhost";
    }
  }

  /** Returns a new application URI: of the machine and the plant, made once and then kept. */
  String newApplicationUri() {
    return "urn:" + slug(machineName()) + ":strapline:bridge:" + slug(plant);
  }

  List<String> addresses() {
    return hosts.stream().filter(CertificateNames::isAddress).toList();
  }

  List<String> dnsNames() {
    return hosts.stream().filter(host -> !isAddress(host)).toList();
  }

  private static boolean isAddress(String host) {
    return host.contains(":") || IPV4.matcher(host).matches();
  }

  private static String slug(String text) {
    String slug = text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String trimmed = slug.replaceAll("^-|-$", "");
    return trimmed.isEmpty() ? "plant" : trimmed;
  }
}
