package io.strapline.bridge.cli;

import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Sample;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import io.strapline.level.vessel.CapacityCurve;
import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The one value that {@code eval} starts from. */
final class GivenValue {

  @Option(names = "--current", paramLabel = "CURRENT", description = "Loop current, such as 12mA.")
  private @Nullable String current;

  @Option(
      names = "--distance",
      paramLabel = "LENGTH",
      description = "Distance along the beam, such as 7.3m.")
  private @Nullable String distance;

  @Option(
      names = "--level",
      paramLabel = "LENGTH",
      description = "Level above the datum, such as 2m.")
  private @Nullable String level;

  @Option(names = "--volume", paramLabel = "VOLUME", description = "Volume, such as 40m3.")
  private @Nullable String volume;

  @Option(
      names = "--raw-count",
      paramLabel = "NUMBER",
      description = "Raw count of the input card, such as 13824.")
  private @Nullable Double rawCount;

  GivenValue() {}

  /**
   * Returns the value as a sample of this point.
   *
   * @throws IllegalArgumentException telling what is wrong with the value
   */
  Sample sample(PointSettings point, Instant time) {
    if (current != null) {
      return Sample.current(time, parse("--current", current, Dimension.CURRENT));
    }
    if (distance != null) {
      return Sample.distance(time, parse("--distance", distance, Dimension.LENGTH));
    }
    if (level != null) {
      return Sample.level(time, parse("--level", level, Dimension.LENGTH));
    }
    return volume != null
        ? Sample.level(time, levelOf(parse("--volume", volume, Dimension.VOLUME), point))
        : Sample.rawCount(time, rawCount == null ? Double.NaN : rawCount);
  }

  private static double parse(String option, String text, Dimension dimension) {
    try {
      return Quantities.parse(text, dimension);
    } catch (IllegalArgumentException unreadable) {
      throw new IllegalArgumentException(option + " " + unreadable.getMessage(), unreadable);
    }
  }

  private static double levelOf(double cubicMetres, PointSettings point) {
    CapacityCurve vessel =
        point
            .vessel()
            .orElseThrow(
                () ->
                    new IllegalArgumentException(
                        "--volume: " + point.tag() + " has no vessel; give --level instead"));
    double capacity = vessel.capacityCubicMetres();
    if (!(cubicMetres >= 0 && cubicMetres <= capacity)) {
      throw new IllegalArgumentException(
          String.format(
              Locale.ROOT,
              "--volume %s m3: must lie between 0 and the capacity, %.3f m3",
              cubicMetres,
              capacity));
    }
    return vessel.heightMetres(cubicMetres);
  }
}
