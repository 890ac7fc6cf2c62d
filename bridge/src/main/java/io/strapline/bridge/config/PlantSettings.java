package io.strapline.bridge.config;

import java.nio.file.Path;
import java.util.List;

/**
 * A whole plant as configured. Immutable.
 *
 * @param name of the plant
 * @param file the configuration file; relative paths inside it start at its folder
 * @param dataFolder where certificates and state are kept
 * @param opcUa the OPC UA server
 * @param modbus the Modbus TCP server
 * @param points the measuring points in the order of the file, at least one, tags unique
 */
public record PlantSettings(
    String name,
    Path file,
    Path dataFolder,
    OpcUaSettings opcUa,
    ModbusSettings modbus,
    List<PointConfig> points) {

  /** Copies the list. */
  public PlantSettings {
    points = List.copyOf(points);
  }
}
