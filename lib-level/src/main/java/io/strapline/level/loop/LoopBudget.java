package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import java.util.List;

/**
 * Voltage budget of a two-wire loop: what the supply leaves for the transmitter once the resistance
 * in the loop has had its share. Immutable.
 *
 * <p>{@code U_left = U_supply - I R} and {@code R_max = (U_supply - U_min) / I}: open PLC
 * engineering course, module 14 "Analog Signals and Process I/O", section 1.4. A loop that must
 * signal an upscale failure needs its budget at {@link #UPSCALE_FAILURE_MILLIAMPS}, not at 20 mA,
 * and at the lowest supply voltage that can occur.
 *
 * @param supplyVolts lowest voltage of the loop supply, greater than zero
 * @param transmitterMinimumVolts least voltage at the transmitter's terminals (its lift-off
 *     voltage), zero or more
 * @param resistances everything in series with the transmitter: burden, barrier, cable; may be
 *     empty
 */
public record LoopBudget(
    double supplyVolts, double transmitterMinimumVolts, List<Resistance> resistances) {

  /** Current at 100 % of the range, in mA. */
  public static final double FULL_SCALE_MILLIAMPS = LoopRange.FULL_SCALE_MILLIAMPS;

  /** Current of an upscale failure signal in the source named above, in mA. */
  public static final double UPSCALE_FAILURE_MILLIAMPS = 22;

  private static final double MILLIAMPS_PER_AMP = 1000;

  /**
   * One resistance in the loop.
   *
   * @param name what it is, not empty
   * @param ohms both conductors of a cable together, zero or more
   */
  public record Resistance(String name, double ohms) {

    /** Checks that the name is there and the resistance is finite and not negative. */
    public Resistance {
      Check.text("LoopBudget.resistance.name", name, "name it, such as burden, barrier or cable");
      ohms =
          Check.notNegative(
              "LoopBudget.resistance." + name, ohms, "ohm", "enter its resistance in the loop");
    }
  }

  /** Whether the transmitter gets the voltage it needs. */
  public enum Verdict {
    /** The transmitter can drive the current. */
    SUFFICIENT,
    /** The transmitter cannot drive the current: the signal saturates below it. */
    TOO_LOW
  }

  /**
   * The budget at one current. Immutable.
   *
   * @param currentMilliamps the current, in mA
   * @param dropVolts voltage lost in the resistances
   * @param leftVolts voltage left for the transmitter; negative when the supply cannot even drive
   *     the current through the resistances
   * @param greatestOhms greatest total resistance at which the transmitter would still get its
   *     minimum; negative when the supply itself lies below that minimum
   * @param verdict {@code SUFFICIENT} when {@code leftVolts} is at least the transmitter's minimum
   */
  public record Balance(
      double currentMilliamps,
      double dropVolts,
      double leftVolts,
      double greatestOhms,
      Verdict verdict) {}

  /** Checks the voltages and takes a copy of the resistances. */
  public LoopBudget {
    Check.positive("LoopBudget.supply", supplyVolts, "V", "enter the lowest supply voltage");
    transmitterMinimumVolts =
        Check.notNegative(
            "LoopBudget.transmitterMinimum",
            transmitterMinimumVolts,
            "V",
            "enter the least voltage at the transmitter's terminals");
    Check.present("LoopBudget.resistances", resistances, "pass an empty list for none");
    resistances = List.copyOf(resistances);
  }

  /** Returns the sum of the resistances, in ohm, zero or more. */
  public double totalOhms() {
    double total = 0;
    for (Resistance resistance : resistances) {
      total += resistance.ohms;
    }
    return total;
  }

  /**
   * Returns the budget at a current.
   *
   * @param currentMilliamps mA, greater than zero; {@link #FULL_SCALE_MILLIAMPS} for the range,
   *     {@link #UPSCALE_FAILURE_MILLIAMPS} for an upscale failure signal
   */
  public Balance at(double currentMilliamps) {
    Check.positive("LoopBudget.current", currentMilliamps, "mA", "enter a current, such as 22");
    double amps = currentMilliamps / MILLIAMPS_PER_AMP;
    double drop = amps * totalOhms();
    double left = supplyVolts - drop;
    return new Balance(
        currentMilliamps,
        drop,
        left,
        (supplyVolts - transmitterMinimumVolts) / amps,
        left >= transmitterMinimumVolts ? Verdict.SUFFICIENT : Verdict.TOO_LOW);
  }
}
