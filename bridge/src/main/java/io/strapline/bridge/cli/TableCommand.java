package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.PointConfig;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import io.strapline.level.vessel.CapacityCurve;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the capacity table of a point's vessel. */
@Command(
    name = "table",
    mixinStandardHelpOptions = true,
    description = {
      "Prints the capacity table of a point's vessel, volume against height, as CSV.",
      "A capacity-table vessel reads such a file back."
    },
    footer = {"", "Example:", "  strapline table config/kestrel-quay.yaml LT-201 --step 10cm"})
final class TableCommand implements Callable<Integer> {

  private static final int MOST_ROWS = 100_000;
  private static final double FINEST_STEP_METRES = 1e-3;

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec
  private CommandSpec spec;

  @Mixin private PlantArgument plant = new PlantArgument();

  @Parameters(index = "1", paramLabel = "POINT", description = "Tag of the measuring point.")
  private String tag = "";

  @Option(
      names = "--step",
      paramLabel = "LENGTH",
      defaultValue = "0.1m",
      description = "Height between two rows, such as 10cm; default: ${DEFAULT-VALUE}.")
  private String step = "";

  TableCommand() {}

  @Override
  public Integer call() throws ConfigException {
    PointConfig point = plant.point(tag);
    CapacityCurve vessel =
        point.point().vessel().orElseThrow(() -> plant.usage(tag + " has no vessel"));
    PrintWriter out = spec.commandLine().getOut();
    new TableText(point, vessel, stepMetres(vessel)).write(out);
    out.flush();
    return ExitCodes.OK;
  }

  private double stepMetres(CapacityCurve vessel) {
    double metres = parsed();
    if (!(metres >= FINEST_STEP_METRES && metres >= vessel.maxHeightMetres() / MOST_ROWS)) {
      throw plant.usage(
          "--step "
              + step
              + ": must be 1 mm or more and give at most "
              + MOST_ROWS
              + " rows; write such as 10cm");
    }
    return metres;
  }

  private double parsed() {
    try {
      return Quantities.parse(step, Dimension.LENGTH);
    } catch (IllegalArgumentException unreadable) {
      throw plant.usage("--step " + unreadable.getMessage());
    }
  }
}
