package io.strapline.level.reading;

/**
 * Status signal of NAMUR NE 107. The English names are this project's wording; the numbers
 * published over OPC UA are those of {@code DeviceHealthEnumeration} (OPC UA DI nodeset, node
 * i=6244).
 */
public enum DiagnosticStatus {
  /** No diagnostic is active. */
  NORMAL,
  /** F: the signal is invalid because of a malfunction. */
  FAILURE,
  /**
   * C: the signal is temporarily invalid because of work on the device, a test or a forced value.
   */
  FUNCTION_CHECK,
  /** S: the device runs outside its specification; the signal may be less exact than stated. */
  OUT_OF_SPECIFICATION,
  /** M: the signal is valid, but a reserve is nearly used up. */
  MAINTENANCE_REQUIRED;

  /**
   * Returns the letter of the status: {@code F}, {@code C}, {@code S}, {@code M}, or {@code -} for
   * normal.
   */
  public char letter() {
    return switch (this) {
      case NORMAL -> '-';
      case FAILURE -> 'F';
      case FUNCTION_CHECK -> 'C';
      case OUT_OF_SPECIFICATION -> 'S';
      case MAINTENANCE_REQUIRED -> 'M';
    };
  }

  /**
   * Returns the value in OPC UA {@code DeviceHealthEnumeration}: 0 to 4. The number is no
   * precedence.
   */
  public int deviceHealth() {
    return switch (this) {
      case NORMAL -> 0;
      case FAILURE -> 1;
      case FUNCTION_CHECK -> 2;
      case OUT_OF_SPECIFICATION -> 3;
      case MAINTENANCE_REQUIRED -> 4;
    };
  }

  /**
   * Returns the status that prevails when both are active, in the order {@link
   * StatusPrecedence#DEFAULT}: F before C before S before M.
   */
  public static DiagnosticStatus worst(DiagnosticStatus a, DiagnosticStatus b) {
    return StatusPrecedence.DEFAULT.worst(a, b);
  }
}
