package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.PlantFile;
import io.strapline.bridge.config.PlantReader;
import io.strapline.bridge.config.PointConfig;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The configuration file that most commands take first. */
final class PlantArgument {

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec(Spec.Target.MIXEE)
  private CommandSpec command;

  @Parameters(index = "0", paramLabel = "CONFIG", description = "Configuration file of the plant.")
  private Path file = Path.of("");

  /** Reads the file. */
  PlantFile read() throws ConfigException {
    return PlantReader.read(file);
  }

  /** Reads the file and returns one of its points. */
  PointConfig point(String tag) throws ConfigException {
    List<PointConfig> points = read().plant().points();
    return points.stream()
        .filter(point -> point.tag().equals(tag))
        .findFirst()
        .orElseThrow(() -> usage("no measuring point " + tag + "; there are " + tags(points)));
  }

  /** Builds the error for a wrong command line. */
  ParameterException usage(String message) {
    return new ParameterException(command.commandLine(), message);
  }

  private static String tags(List<PointConfig> points) {
    return String.join(", ", points.stream().map(PointConfig::tag).toList());
  }
}
