package io.strapline.bridge.publish.modbus;

import org.jspecify.annotations.Nullable;

/** Functions of the Modbus Application Protocol V1.1b3, section 6, that this server knows. */
enum Function {
  /** Section 6.1. */
  READ_COILS(0x01, 4, false),
  /** Section 6.2. */
  READ_DISCRETE_INPUTS(0x02, 4, false),
  /** Section 6.3. */
  READ_HOLDING_REGISTERS(0x03, 4, false),
  /** Section 6.4. */
  READ_INPUT_REGISTERS(0x04, 4, false),
  /** Section 6.5. */
  WRITE_SINGLE_COIL(0x05, 4, true),
  /** Section 6.6. */
  WRITE_SINGLE_REGISTER(0x06, 4, true),
  /** Section 6.11. */
  WRITE_MULTIPLE_COILS(0x0F, 5, true),
  /** Section 6.12. */
  WRITE_MULTIPLE_REGISTERS(0x10, 5, true),
  /** Section 6.16. */
  MASK_WRITE_REGISTER(0x16, 6, true),
  /** Section 6.17. */
  READ_WRITE_REGISTERS(0x17, 9, true),
  /** Section 6.19; of its kinds only device identification, section 6.21. */
  ENCAPSULATED(0x2B, 1, false);

  private static final @Nullable Function[] BY_CODE = byCode();

  private final int code;
  private final int leastBytes;
  private final boolean writes;

  Function(int code, int leastBytes, boolean writes) {
    this.code = code;
    this.leastBytes = leastBytes;
    this.writes = writes;
  }

  private static @Nullable Function[] byCode() {
    @Nullable Function[] table = new @Nullable Function[256];
    for (Function function : values()) {
      table[function.code] = function;
    }
    return table;
  }

  /** Returns the function of a code from 0 to 255; null when it is not known. */
  static @Nullable Function of(int code) {
    return BY_CODE[code];
  }

  /** Returns the code on the wire. */
  int code() {
    return code;
  }

  /** Returns how many bytes must follow the code in any request. */
  int leastBytes() {
    return leastBytes;
  }

  /** Returns whether it can change something. */
  boolean writes() {
    return writes;
  }
}
