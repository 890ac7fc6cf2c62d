package io.strapline.bridge.publish.modbus;

/** The peer has gone, or may have: nothing was executed and nothing is answered. */
final class GoneException extends Exception {

  private static final long serialVersionUID = 1;

  GoneException() {
    super("the peer has gone", null, false, false);
  }
}
