package io.strapline.bridge.publish.opcua.alarms;

import java.util.List;
import java.util.function.Consumer;

/**
 * The conditions of a plant and what operators may do to them. Safe for any thread. What operators
 * ask for is answered when it has taken effect, or after ten seconds with {@link Verdict#BUSY}.
 */
public interface Conditions {

  /** What became of a request. */
  enum Verdict {
    /** It took effect. */
    DONE,
    /** There is no such condition. */
    UNKNOWN,
    /** The event is none of the last 50 of this condition, or not the one that waits now. */
    EVENT_UNKNOWN,
    /** Nothing waits for being acknowledged. */
    ALREADY_ACKNOWLEDGED,
    /** The condition is disabled. */
    DISABLED,
    /** The condition is enabled already. */
    ALREADY_ENABLED,
    /** The condition is disabled already. */
    ALREADY_DISABLED,
    /** Nothing can be reset: not latched, not acknowledged, or the alarm still stands. */
    NOT_RESETTABLE,
    /** Too much is going on; it may still take effect. */
    BUSY
  }

  /**
   * Who asks, and what they say to it.
   *
   * @param name of the operator
   * @param comment may be empty; an empty one leaves the last comment as it is
   */
  record By(String name, String comment) {}

  /** Told of changes, in their order, by one thread. */
  interface Listener {

    /**
     * A condition has changed.
     *
     * @param announced whether clients are to be told, or the change is worth no event
     */
    void changed(ConditionState state, boolean announced);

    /** Changes were lost in a flood; the latest states have been told. */
    void refreshRequired();
  }

  /** Returns all conditions as they were told last. */
  List<ConditionState> states();

  /** Acknowledges the alarms of a condition that waited when the event was told. */
  Verdict acknowledge(String conditionId, String eventId, By by);

  /** Acknowledges all alarms of a point; returns how many waited, -1 when too busy. */
  int acknowledgeAll(String tag, By by);

  /** Adds a comment to a condition. */
  Verdict comment(String conditionId, String eventId, By by);

  /** Lets clients be told of a condition, or not; the alarm itself goes on. */
  Verdict enable(String conditionId, boolean enabled, By by);

  /** Resets the latched alarms of a condition. */
  Verdict reset(String conditionId, By by);

  /**
   * Gives all conditions between two changes, so that what is told before and after fits to it;
   * returns false when too busy. Does not wait for it.
   */
  boolean refresh(Consumer<List<ConditionState>> to);
}
