package io.strapline.level.alarm;

import io.strapline.level.internal.Check;

/**
 * What the alarms of one operator are measured against. Immutable.
 *
 * @param perTenMinutes rate of announced alarms
 * @param perHour likewise
 * @param perDay likewise; the per-day figures stand in the 2009 edition of ISA-18.2 only
 * @param flood when alarms come too fast to be answered
 * @param nuisance alarms that come too often or stand too long
 */
public record AlarmTargets(
    Rate perTenMinutes, Rate perHour, Rate perDay, Flood flood, Nuisance nuisance) {

  /**
   * 1 / 2 in ten minutes, 6 / 12 in an hour, 150 / 300 in a day; flood above 10 in ten minutes
   * until below 5, less than 1 % of the time; chattering from 3 in 60 s; stale after 24 h, fewer
   * than 5 (open PLC engineering course, module on alarms and diagnostics, sections 2.7 and 2.10,
   * quoting ISA-18.2).
   */
  public static final AlarmTargets ISA_18_2 =
      new AlarmTargets(
          new Rate(1, 2),
          new Rate(6, 12),
          new Rate(150, 300),
          new Flood(10, 5, 1),
          new Nuisance(3, 60, 86_400, 5));

  /** Checks that all are there. */
  public AlarmTargets {
    Check.present("AlarmTargets.perTenMinutes", perTenMinutes, "give the rate");
    Check.present("AlarmTargets.perHour", perHour, "give the rate");
    Check.present("AlarmTargets.perDay", perDay, "give the rate");
    Check.present("AlarmTargets.flood", flood, "say when a flood begins and ends");
    Check.present("AlarmTargets.nuisance", nuisance, "say what chatters and what is stale");
  }

  /**
   * A rate of alarms, on average.
   *
   * @param acceptable up to here very likely acceptable, greater than zero
   * @param manageable up to here manageable at most, at least {@code acceptable}
   */
  public record Rate(double acceptable, double manageable) {

    /** Checks the order. */
    public Rate {
      acceptable =
          Check.positive("AlarmTargets.rate.acceptable", acceptable, "", "enter the target");
      if (!(Double.isFinite(manageable) && manageable >= acceptable)) {
        throw Check.error(
            "AlarmTargets.rate.manageable",
            manageable,
            "",
            "must be finite and at least acceptable (" + acceptable + ")",
            "enter the greatest rate that can be managed");
      }
    }

    /** Returns how a rate stands to the target. */
    public Rating rate(double alarms) {
      if (alarms <= acceptable) {
        return Rating.ACCEPTABLE;
      }
      return alarms <= manageable ? Rating.MANAGEABLE : Rating.TOO_MANY;
    }
  }

  /** How a rate stands to its target. */
  public enum Rating {
    /** At or below the target. */
    ACCEPTABLE,
    /** Above the target but not above what can be managed. */
    MANAGEABLE,
    /** More than can be managed. */
    TOO_MANY
  }

  /**
   * When alarms come too fast to be answered.
   *
   * @param above a flood begins with more than so many in ten minutes, 1 or more
   * @param below it ends with fewer than so many, 1 to {@code above}
   * @param percentOfTime floods should take less than this, in (0, 100]
   */
  public record Flood(int above, int below, double percentOfTime) {

    /** Checks the order. */
    public Flood {
      above = Check.between("AlarmTargets.flood.above", above, "", 1, 1000, "enter its begin");
      below = Check.between("AlarmTargets.flood.below", below, "", 1, above, "enter its end");
      Check.positive("AlarmTargets.flood.percentOfTime", percentOfTime, "%", "enter the target");
      Check.between(
          "AlarmTargets.flood.percentOfTime", percentOfTime, "%", 0, 100, "enter the target");
    }
  }

  /**
   * What chatters and what is stale.
   *
   * @param chatterActivations an alarm chatters with so many activations, 2 or more
   * @param chatterSeconds within so many seconds, greater than zero
   * @param staleSeconds an alarm is stale when active for longer than this, greater than zero
   * @param staleFewerThan there should be fewer stale alarms than this, 1 or more
   */
  public record Nuisance(
      int chatterActivations, double chatterSeconds, double staleSeconds, int staleFewerThan) {

    /** Checks all numbers. */
    public Nuisance {
      chatterActivations =
          Check.between(
              "AlarmTargets.nuisance.chatterActivations",
              chatterActivations,
              "",
              2,
              1000,
              "enter the activations");
      chatterSeconds = seconds("chatterSeconds", chatterSeconds);
      staleSeconds = seconds("staleSeconds", staleSeconds);
      staleFewerThan =
          Check.between(
              "AlarmTargets.nuisance.staleFewerThan",
              staleFewerThan,
              "",
              1,
              1_000_000,
              "enter the target");
    }

    private static double seconds(String name, double value) {
      return Check.positive("AlarmTargets.nuisance." + name, value, "s", "enter the time");
    }
  }
}
