package io.strapline.bridge.publish.modbus;

/**
 * A peer that is what a test wants it to be.
 *
 * @param mayWrite whether it may write
 * @param isThere whether it waits for the answer
 */
record TestPeer(boolean mayWrite, boolean isThere) implements Peer {

  static final TestPeer READER = new TestPeer(false, true);
  static final TestPeer WRITER = new TestPeer(true, true);
  static final TestPeer GONE = new TestPeer(true, false);

  @Override
  public String name() {
    return "192.0.2.10";
  }
}
