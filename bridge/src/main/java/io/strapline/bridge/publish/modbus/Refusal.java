package io.strapline.bridge.publish.modbus;

/** A request is answered with an exception code. Has no stack trace: it is no fault of ours. */
final class Refusal extends Exception {

  private static final long serialVersionUID = 1;

  private final ExceptionCode code;

  Refusal(ExceptionCode code) {
    super(code.name(), null, false, false);
    this.code = code;
  }

  ExceptionCode code() {
    return code;
  }

  /** Refuses with exception 03, section 7 of the protocol, unless the request is built rightly. */
  static void unlessBuilt(boolean rightly) throws Refusal {
    unless(rightly, ExceptionCode.ILLEGAL_DATA_VALUE);
  }

  /** Refuses with exception 02 unless the addresses are there. */
  static void unlessThere(boolean there) throws Refusal {
    unless(there, ExceptionCode.ILLEGAL_DATA_ADDRESS);
  }

  /** Refuses with a code unless a condition holds. */
  static void unless(boolean condition, ExceptionCode code) throws Refusal {
    if (!condition) {
      throw new Refusal(code);
    }
  }
}
