package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.PlantFile;
import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Checks a configuration without starting anything. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "Checks a configuration and tells what would run.",
      "Every problem is listed with file, line and column."
    },
    footer = {"", "Example:", "  strapline check config/kestrel-quay.yaml"})
final class CheckCommand implements Callable<Integer> {

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec
  private CommandSpec spec;

  @Mixin private PlantArgument plant = new PlantArgument();

  @Option(names = "--strict", description = "End with code 3 when there are warnings, too.")
  private boolean strict;

  CheckCommand() {}

  @Override
  public Integer call() throws ConfigException {
    PlantFile read = plant.read();
    PrintWriter out = spec.commandLine().getOut();
    PlantSummary.lines(read).forEach(out::println);
    out.flush();
    return strict && !read.warnings().isEmpty() ? ExitCodes.CONFIGURATION : ExitCodes.OK;
  }
}
