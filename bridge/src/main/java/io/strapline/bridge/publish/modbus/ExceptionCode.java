package io.strapline.bridge.publish.modbus;

/** Exception codes of the Modbus Application Protocol V1.1b3, section 7, that this server uses. */
enum ExceptionCode {
  /** The function is not served, or not for this peer. */
  ILLEGAL_FUNCTION(0x01),
  /** The range is not mapped, cuts a value of several registers in two, or cannot be written. */
  ILLEGAL_DATA_ADDRESS(0x02),
  /** The request is built wrongly: quantity or length. No judgement of a process value. */
  ILLEGAL_DATA_VALUE(0x03),
  /** The request could not be executed: a fault inside the program, or a value it cannot take. */
  SERVER_DEVICE_FAILURE(0x04),
  /** The unit identifier is none that this server stands for. */
  GATEWAY_TARGET_DEVICE_FAILED_TO_RESPOND(0x0B);

  private final int code;

  ExceptionCode(int code) {
    this.code = code;
  }

  /** Returns the code on the wire. */
  byte code() {
    return (byte) code;
  }
}
