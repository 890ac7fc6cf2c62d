package io.strapline.level.alarm;

import java.util.OptionalDouble;
import java.util.Set;

/**
 * How the alarms of one operator perform at one moment. Immutable. Judge the averages over thirty
 * days or more (ISA-18.2 as quoted in {@link AlarmTargets#ISA_18_2}).
 *
 * @param tenMinutes announced alarms
 * @param hour likewise
 * @param day likewise
 * @param flood floods
 * @param nuisance chattering and stale alarms
 */
public record AlarmPerformance(
    Load tenMinutes, Load hour, Load day, Floods flood, Nuisances nuisance) {

  /**
   * Announced alarms per stretch of time.
   *
   * @param latest in the stretch up to now
   * @param average per stretch since the start; empty before one stretch has passed
   * @param rating of the average, of {@code latest} while there is none
   */
  public record Load(int latest, OptionalDouble average, AlarmTargets.Rating rating) {}

  /**
   * Floods.
   *
   * @param now whether there is one
   * @param percentOfTime share of the time since the start
   * @param onTarget whether that share is below the target
   */
  public record Floods(boolean now, double percentOfTime, boolean onTarget) {}

  /**
   * Chattering and stale alarms.
   *
   * @param chattering names of those that chatter now; there should be none
   * @param stale names of those that have been active for too long
   * @param onTarget whether none chatters and few enough are stale
   */
  public record Nuisances(Set<String> chattering, Set<String> stale, boolean onTarget) {

    /** Copies the names. */
    public Nuisances {
      chattering = Set.copyOf(chattering);
      stale = Set.copyOf(stale);
    }
  }
}
