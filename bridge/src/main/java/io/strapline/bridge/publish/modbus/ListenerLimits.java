package io.strapline.bridge.publish.modbus;

import java.time.Duration;

/**
 * What the server bears with. Immutable.
 *
 * @param connections most clients at a time; the next is refused with a reset
 * @param connectionsPerAddress most clients at a time from one address
 * @param idle a client that completes no request for so long is dropped
 * @param frame a frame must be complete within this time after its first byte
 * @param stalled a client that takes none of its answers for so long is dropped
 */
record ListenerLimits(
    int connections, int connectionsPerAddress, Duration idle, Duration frame, Duration stalled) {

  /** Common practice, no source: 64 clients, 32 of one address, 60 s idle, 2 s for a frame. */
  static final ListenerLimits DEFAULT =
      new ListenerLimits(
          64, 32, Duration.ofSeconds(60), Duration.ofSeconds(2), Duration.ofSeconds(5));
}
