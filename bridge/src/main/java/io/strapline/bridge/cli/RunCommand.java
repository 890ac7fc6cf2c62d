package io.strapline.bridge.cli;

import io.strapline.bridge.app.PlantRun;
import io.strapline.bridge.app.StandardParts;
import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.PlantFile;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings;
import io.strapline.bridge.model.FastClock;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.RealClock;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import java.io.IOException;
import java.io.PrintWriter;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs a plant until it is stopped. */
@Command(
    name = "run",
    mixinStandardHelpOptions = true,
    description = {
      "Runs a plant: reads its transmitters and publishes over OPC UA and Modbus TCP.",
      "Stops in order at an interrupt (Ctrl-C) or termination signal, with code 0.",
      "Log lines go to standard error; on a terminal a live table is shown, too."
    },
    footer = {
      "",
      "Examples:",
      "  strapline run config/kestrel-quay.yaml",
      "  strapline run config/kestrel-quay.yaml --speed 20 --for 30s"
    })
final class RunCommand implements Callable<Integer> {

  private static final Duration REDRAW = Duration.ofMillis(500);
  private static final Duration FOREVER = Duration.ofDays(36_500);

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec
  private CommandSpec spec;

  @Mixin private PlantArgument plant = new PlantArgument();

  @Option(
      names = "--speed",
      paramLabel = "N",
      description = {
        "Let plant time run N times as fast as real time, for simulated and",
        "recorded signals (default ${DEFAULT-VALUE})."
      })
  private double speed = 1;

  @Option(
      names = "--for",
      paramLabel = "TIME",
      description = "Stop after this real time, such as 30s or 5 min.")
  private @Nullable String time;

  @Option(
      names = "--table",
      negatable = true,
      description = "Show the live table (default: only on a terminal).")
  private @Nullable Boolean table;

  RunCommand() {}

  @Override
  public Integer call() throws ConfigException, IOException, InterruptedException {
    Duration runTime = runTime();
    PlantFile read = plant.read();
    PlantClock clock = clock(read.plant());
    try (StopRequest stop = StopRequest.listen();
        PlantRun run = PlantRun.of(read.plant(), clock, new StandardParts())) {
      run.start();
      tellStart(read, run.endpoints());
      serve(run, stop, runTime);
    }
    return ExitCodes.OK;
  }

  private Duration runTime() {
    if (time == null) {
      return FOREVER;
    }
    try {
      double seconds = Quantities.parse(time, Dimension.TIME);
      if (seconds > 0 && seconds <= FOREVER.toSeconds()) {
        return Duration.ofMillis((long) (seconds * 1000));
      }
      throw plant.usage("--for = " + time + ": must be greater than zero; write such as 30s");
    } catch (IllegalArgumentException wrong) {
      throw plant.usage("--for = " + time + ": " + wrong.getMessage());
    }
  }

  private PlantClock clock(PlantSettings settings) {
    if (speed == 1) {
      return RealClock.startNow();
    }
    for (PointConfig point : settings.points()) {
      if (point.source() instanceof SourceSettings.Modbus) {
        throw plant.usage(
            "--speed = "
                + speed
                + ": "
                + point.tag()
                + " is a real device, whose time cannot be made faster; leave --speed out");
      }
    }
    try {
      return FastClock.startNow(speed);
    } catch (IllegalArgumentException wrong) {
      throw plant.usage("--speed: " + wrong.getMessage());
    }
  }

  private void tellStart(PlantFile read, List<String> endpoints) {
    PrintWriter out = spec.commandLine().getOut();
    read.warnings().forEach(warning -> out.println("warning: " + warning));
    out.println(read.plant().name() + " runs with " + read.plant().points().size() + " points");
    endpoints.forEach(endpoint -> out.println("  clients connect to " + endpoint));
    if (endpoints.isEmpty()) {
      out.println("  nothing is published: no server is enabled in the configuration");
    }
    out.println("Stop with Ctrl-C.");
    out.flush();
  }

  private void serve(PlantRun run, StopRequest stop, Duration runTime) throws InterruptedException {
    boolean live = table == null ? Help.Ansi.AUTO.enabled() : table;
    if (!live) {
      stop.await(runTime);
      return;
    }
    long end = System.nanoTime() + runTime.toNanos();
    LiveScreen screen = new LiveScreen(spec.commandLine().getOut());
    try (HeldLog log = new HeldLog()) {
      boolean asked = false;
      while (!asked && System.nanoTime() < end) {
        screen.draw(log.take(), LiveTable.lines(run.store().view()));
        Duration left = Duration.ofNanos(end - System.nanoTime());
        asked = stop.await(left.compareTo(REDRAW) < 0 ? left : REDRAW);
      }
    }
  }
}
