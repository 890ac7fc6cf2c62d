package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.PlantSettings;
import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Prints what a plant publishes: Modbus registers and OPC UA variables. */
@Command(
    name = "map",
    mixinStandardHelpOptions = true,
    description = {
      "Prints the Modbus register map and the OPC UA variables of a plant.",
      "Address is the PDU address, counted from 0, as decimal and hex. The six-digit",
      "reference numbers count from 1: 300001 and 400001 are address 0. In five-digit",
      "notation leave out the second digit: 400135 is 40135 (up to address 9998)."
    },
    footer = {
      "",
      "Examples:",
      "  strapline map config/kestrel-quay.yaml",
      "  strapline map config/kestrel-quay.yaml --csv --registers > registers.csv",
      "  strapline map config/kestrel-quay.yaml --html > map.html"
    })
final class MapCommand implements Callable<Integer> {

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec
  private CommandSpec spec;

  @Mixin private PlantArgument plant = new PlantArgument();

  @ArgGroup private Format format = new Format();

  @ArgGroup private Part part = new Part();

  MapCommand() {}

  /** At most one way to print. */
  static final class Format {
    @Option(names = "--csv", description = "Print CSV (RFC 4180).")
    private boolean csv;

    @Option(names = "--markdown", description = "Print Markdown tables.")
    private boolean markdown;

    @Option(names = "--json", description = "Print JSON.")
    private boolean json;

    @Option(names = "--html", description = "Print one HTML page, for a browser or for paper.")
    private boolean html;

    private String render(String plantName, List<Sheet> sheets) {
      return html ? SheetPage.of(plantName, sheets) : chosen().render(sheets);
    }

    private SheetFormat chosen() {
      if (csv) {
        return SheetFormat.CSV;
      }
      if (json) {
        return SheetFormat.JSON;
      }
      return markdown ? SheetFormat.MARKDOWN : SheetFormat.TEXT;
    }
  }

  /** At most one table alone. */
  static final class Part {
    @Option(names = "--registers", description = "Only the Modbus registers.")
    private boolean registers;

    @Option(names = "--inputs", description = "Only the Modbus discrete inputs.")
    private boolean inputs;

    @Option(names = "--nodes", description = "Only the OPC UA variables.")
    private boolean nodes;

    private boolean all() {
      return !registers && !inputs && !nodes;
    }
  }

  @Override
  public Integer call() throws ConfigException {
    PrintWriter out = spec.commandLine().getOut();
    PlantSettings settings = plant.read().plant();
    out.print(format.render(settings.name(), sheets(settings)));
    out.flush();
    return ExitCodes.OK;
  }

  private List<Sheet> sheets(PlantSettings settings) {
    List<Sheet> sheets = new ArrayList<>();
    if (part.all() || part.registers) {
      sheets.add(MapSheets.registers(settings));
    }
    if (part.all() || part.inputs) {
      sheets.add(MapSheets.discreteInputs(settings));
    }
    if (part.all() || part.nodes) {
      sheets.add(MapSheets.nodes(settings));
    }
    return sheets;
  }
}
