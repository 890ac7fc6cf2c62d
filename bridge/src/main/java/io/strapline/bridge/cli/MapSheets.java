package io.strapline.bridge.cli;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.publish.modbus.RegisterListing;
import io.strapline.bridge.publish.modbus.RegisterListing.Line;
import io.strapline.bridge.publish.modbus.RegisterListing.Table;
import io.strapline.bridge.publish.opcua.NodeList;
import java.util.ArrayList;
import java.util.List;

/** What a plant publishes, as tables. Stateless. */
final class MapSheets {

  private MapSheets() {}

  /** Returns the Modbus registers, by function 04 and 03 alike, in the order of the map. */
  static Sheet registers(PlantSettings plant) {
    return modbus("registers", plant, Table.REGISTER, "input", "holding");
  }

  /** Returns the Modbus discrete inputs, by function 02 and 01 alike, in the order of the map. */
  static Sheet discreteInputs(PlantSettings plant) {
    return modbus("discreteInputs", plant, Table.DISCRETE_INPUT, "discrete", "coil");
  }

  private static Sheet modbus(
      String name, PlantSettings plant, Table table, String readOnly, String other) {
    List<List<Object>> rows = new ArrayList<>();
    for (Line line : RegisterListing.of(plant)) {
      if (line.table() == table) {
        rows.add(cells(line));
      }
    }
    return new Sheet(
        name,
        List.of(
            "point", "address", "hex", readOnly, other, "type", "order", "name", "unit", "step",
            "note"),
        rows);
  }

  private static List<Object> cells(Line line) {
    return List.of(
        line.owner(),
        line.address(),
        line.hex(),
        line.readOnlyReference(),
        line.otherReference(),
        line.entry().type(),
        line.order(),
        line.entry().name(),
        line.entry().unit(),
        line.entry().step(),
        line.entry().note());
  }

  /** Returns the OPC UA variables, in the order of the address space. */
  static Sheet nodes(PlantSettings plant) {
    List<List<Object>> rows = new ArrayList<>();
    for (NodeList.Row row : NodeList.of(plant).rows()) {
      rows.add(List.of(row.nodeId(), row.dataType(), row.unit(), row.access(), row.description()));
    }
    return new Sheet("nodes", List.of("node", "type", "unit", "access", "description"), rows);
  }
}
