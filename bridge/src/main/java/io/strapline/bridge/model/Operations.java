package io.strapline.bridge.model;

import io.strapline.level.alarm.AlarmKind;

/**
 * What an operator may do to the alarms of a point. Safe for any thread; never throws. Each
 * operation is logged with who asked for it, and takes effect before the next scan.
 */
public interface Operations {

  /**
   * Who asks for an operation.
   *
   * @param name user, client certificate or address, as far as it is known
   * @param from where the request came in, such as {@code OPC UA} or {@code Modbus 127.0.0.1}
   * @param comment what the operator says to it; may be empty
   */
  record Operator(String name, String from, String comment) {}

  /** What became of an operation. */
  enum Outcome {
    /** It took effect. */
    DONE,
    /** There was nothing to do: the alarm is not in a state for it. */
    NOTHING_TO_DO,
    /** There is no such point, or the point has no such alarm. */
    UNKNOWN
  }

  /** Acknowledges an alarm. */
  Outcome acknowledge(String tag, AlarmKind kind, Operator by);

  /** Resets a latched alarm. */
  Outcome reset(String tag, AlarmKind kind, Operator by);
}
