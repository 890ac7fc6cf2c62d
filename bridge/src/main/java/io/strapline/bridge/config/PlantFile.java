package io.strapline.bridge.config;

import java.util.List;

/**
 * A configuration file that was read. Immutable.
 *
 * @param plant what it says
 * @param warnings what is doubtful in it, in the order of the file
 */
public record PlantFile(PlantSettings plant, List<ConfigProblem> warnings) {

  /** Copies the list. */
  public PlantFile {
    warnings = List.copyOf(warnings);
  }
}
