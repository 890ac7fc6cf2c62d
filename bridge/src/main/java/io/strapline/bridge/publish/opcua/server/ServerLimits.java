package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import org.eclipse.milo.opcua.sdk.server.OpcUaServerConfigLimits;
import org.eclipse.milo.opcua.stack.core.channel.EncodingLimits;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UInteger;

/**
 * What clients may ask for. The library's own limits are partly none at all; these are this
 * project's choice. Immutable.
 */
public final class ServerLimits implements OpcUaServerConfigLimits {

  /** Shortest sampling interval, in milliseconds: zero would let one client take a whole core. */
  public static final double SHORTEST_SAMPLING_MILLIS = 100;

  /** Longest queue of one monitored item. */
  public static final int LONGEST_QUEUE = 100;

  /** Chunks of 64 KiB, 32 of them, messages of 2 MiB, and nesting no deeper than 16. */
  public static final EncodingLimits ENCODING =
      new EncodingLimits(
          EncodingLimits.DEFAULT_MAX_CHUNK_SIZE, 32, EncodingLimits.DEFAULT_MAX_MESSAGE_SIZE, 16);

  @Override
  public UInteger getMaxSessions() {
    return uint(50);
  }

  @Override
  public Double getMaxSessionTimeout() {
    return 120_000.0;
  }

  @Override
  public UInteger getMaxSubscriptions() {
    return uint(200);
  }

  @Override
  public UInteger getMaxSubscriptionsPerSession() {
    return uint(20);
  }

  @Override
  public Double getMaxSubscriptionLifetime() {
    return 3_600_000.0;
  }

  @Override
  public Double getMinPublishingInterval() {
    return 100.0;
  }

  @Override
  public Double getMaxPublishingInterval() {
    return 3_600_000.0;
  }

  @Override
  public UInteger getMaxMonitoredItems() {
    return uint(500_000);
  }

  @Override
  public UInteger getMaxMonitoredItemsPerSession() {
    return uint(100_000);
  }

  @Override
  public Double getMinSupportedSampleRate() {
    return SHORTEST_SAMPLING_MILLIS;
  }

  @Override
  public UInteger getMaxNodesPerWrite() {
    return uint(1_000);
  }

  @Override
  public UInteger getMaxNodesPerMethodCall() {
    return uint(100);
  }

  @Override
  public UInteger getMaxNodesPerBrowse() {
    return uint(1_000);
  }

  @Override
  public UInteger getMaxNodesPerTranslateBrowsePathsToNodeIds() {
    return uint(1_000);
  }

  @Override
  public UInteger getMaxNodesPerRegisterNodes() {
    return uint(1_000);
  }
}
