package io.strapline.level.signal;

/** From which branch of the chain alarms are judged. */
public enum AlarmBranch {
  /** Behind gates, obstruction gate and median: no smoothing delays a trip. */
  EARLY,
  /** Behind all stages: alarms agree with what is shown, and come later by the stated delay. */
  SMOOTH
}
