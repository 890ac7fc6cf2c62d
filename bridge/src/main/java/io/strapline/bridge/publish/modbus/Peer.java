package io.strapline.bridge.publish.modbus;

/** Who sent a request. */
interface Peer {

  /** Returns its address, such as {@code 127.0.0.1}, or the port of a serial line. */
  String name();

  /** Returns whether it may write at all. */
  boolean mayWrite();

  /**
   * Returns whether it certainly still waits for the answer. What a peer asked that has gone since
   * is never executed.
   */
  boolean isThere();
}
