package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.publish.opcua.security.AccessRule;
import io.strapline.bridge.publish.opcua.security.CertificateNames;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.security.cert.X509Certificate;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.milo.opcua.sdk.server.EndpointConfig;
import org.eclipse.milo.opcua.stack.core.security.SecurityPolicy;
import org.eclipse.milo.opcua.stack.core.types.enumerated.MessageSecurityMode;

/**
 * Where a server listens and which endpoints it offers there. All endpoints have the empty path, so
 * that host and port are enough to connect. Immutable.
 *
 * @param host address to listen on
 * @param port TCP port, never 0
 * @param names hosts under which the endpoints are offered, the first is the main one
 */
record Listening(String host, int port, List<String> names) {

  private static final List<SecurityPolicy> POLICIES =
      List.of(SecurityPolicy.Basic256Sha256, SecurityPolicy.Aes256_Sha256_RsaPss);

  /**
   * Returns the address to listen on, after trying that it can be had; picks a free port for 0.
   *
   * @throws IOException naming the address
   */
  static Listening probe(OpcUaSettings settings) throws IOException {
    String host = settings.host();
    try (ServerSocket socket = new ServerSocket()) {
      socket.bind(new InetSocketAddress(InetAddress.getByName(host), settings.port()));
      return new Listening(host, socket.getLocalPort(), names(settings));
    } catch (IOException e) {
      throw cannot(host, settings.port(), e.getMessage(), e);
    }
  }

  static IOException cannot(
      String host, int port, @org.jspecify.annotations.Nullable String why, Exception cause) {
    return new IOException(
        "OPC UA cannot listen on "
            + url(host, port)
            + ": "
            + why
            + "; stop the program that holds the port, or set another host or port",
        cause);
  }

  private static List<String> names(OpcUaSettings settings) {
    Set<String> names = new LinkedHashSet<>();
    boolean wildcard = CertificateNames.isWildcard(settings.host());
    names.add(wildcard ? CertificateNames.machineName() : settings.host());
    names.addAll(settings.advertisedHosts());
    return List.copyOf(names);
  }

  /** Returns the URL that people enter. */
  String url() {
    return url(names.get(0), port);
  }

  private static String url(String host, int port) {
    return "opc.tcp://" + inUrl(host) + ":" + port;
  }

  private static String inUrl(String host) {
    return host.contains(":") && !host.startsWith("[") ? "[" + host + "]" : host;
  }

  /** Returns the endpoints: signed and encrypted, and one without security if the rule allows. */
  Set<EndpointConfig> endpoints(X509Certificate certificate, AccessRule rule) {
    Set<EndpointConfig> endpoints = new LinkedHashSet<>();
    for (String name : names) {
      for (SecurityPolicy policy : POLICIES) {
        endpoints.add(
            endpoint(name, rule, policy)
                .setSecurityMode(MessageSecurityMode.SignAndEncrypt)
                .setCertificate(certificate)
                .build());
      }
      if (rule.isOpenLocally()) {
        endpoints.add(endpoint(name, rule, SecurityPolicy.None).build());
      }
    }
    return endpoints;
  }

  private EndpointConfig.Builder endpoint(String name, AccessRule rule, SecurityPolicy policy) {
    return EndpointConfig.newBuilder()
        .setBindAddress(host)
        .setBindPort(port)
        .setHostname(inUrl(name))
        .setPath("")
        .setSecurityPolicy(policy)
        .addTokenPolicy(rule.tokenPolicy(policy));
  }
}
