package io.strapline.bridge.config;

import java.util.List;

/**
 * The OPC UA server. Immutable.
 *
 * @param enabled whether it runs at all
 * @param host address to listen on
 * @param port to listen on, 0 for a free one
 * @param anonymousRead whether clients on this machine may read without a user name; refused when
 *     {@code host} is no loopback address
 * @param advertisedHosts further host names and addresses under which clients reach the server
 */
public record OpcUaSettings(
    boolean enabled, String host, int port, boolean anonymousRead, List<String> advertisedHosts) {

  /** Copies the list. */
  public OpcUaSettings {
    advertisedHosts = List.copyOf(advertisedHosts);
  }
}
