package io.strapline.bridge.source.modbus;

import java.io.IOException;

/** The device answered with an exception: the connection is fine, the request is not. */
final class RefusedException extends IOException {

  private static final long serialVersionUID = 1;

  RefusedException(String message) {
    super(message);
  }
}
