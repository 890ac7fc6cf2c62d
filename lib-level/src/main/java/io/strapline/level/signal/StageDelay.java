package io.strapline.level.signal;

/**
 * What one stage adds to the delay. Immutable.
 *
 * @param stage which
 * @param rampSeconds how late a slow ramp comes, zero or more
 * @param stepSeconds how long after its first sample a step is reached: in full, behind the lag to
 *     99 %; zero or more, infinite never
 */
public record StageDelay(Stage stage, double rampSeconds, double stepSeconds) {}
