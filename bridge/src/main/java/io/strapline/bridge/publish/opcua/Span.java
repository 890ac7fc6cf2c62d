package io.strapline.bridge.publish.opcua;

/**
 * A range of values. Immutable.
 *
 * @param low finite
 * @param high finite, above {@code low}
 */
record Span(double low, double high) {

  /** Returns the span between two values in any order. */
  static Span between(double one, double other) {
    return new Span(Math.min(one, other) + 0.0, Math.max(one, other) + 0.0);
  }

  /** Returns whether this is a range at all: both ends finite and apart. */
  boolean isProper() {
    return Double.isFinite(low) && Double.isFinite(high) && high > low;
  }
}
