package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.PointConfig;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Converts one value at one point and shows every step. */
@Command(
    name = "eval",
    mixinStandardHelpOptions = true,
    description = {
      "Converts one value at one measuring point and shows every step.",
      "A failure current counts at once, without its confirmation time."
    },
    footer = {
      "",
      "Examples:",
      "  strapline eval config/kestrel-quay.yaml LT-101 --current 12.0mA",
      "  strapline eval config/kestrel-quay.yaml LT-201 --volume 40m3 --json"
    })
final class EvalCommand implements Callable<Integer> {

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec
  private CommandSpec spec;

  @Mixin private PlantArgument plant = new PlantArgument();

  @Parameters(index = "1", paramLabel = "POINT", description = "Tag of the measuring point.")
  private String tag = "";

  @ArgGroup(exclusive = true, multiplicity = "1")
  private GivenValue given = new GivenValue();

  @Option(names = "--json", description = "Print one JSON object with SI numbers.")
  private boolean json;

  EvalCommand() {}

  @Override
  public Integer call() throws ConfigException, IOException {
    PointConfig point = plant.point(tag);
    Sample sample = sample(point);
    PointSnapshot snapshot = OneOff.run(point.point(), sample);
    PrintWriter out = spec.commandLine().getOut();
    if (json) {
      out.println(EvalJson.of(snapshot, EvalUncertainty.of(point, snapshot)));
    } else {
      new EvalText(point, sample, snapshot).lines().forEach(out::println);
    }
    out.flush();
    return ExitCodes.OK;
  }

  private Sample sample(PointConfig point) {
    try {
      return given.sample(point.point(), Instant.EPOCH);
    } catch (IllegalArgumentException refused) {
      throw plant.usage(String.valueOf(refused.getMessage()));
    }
  }
}
