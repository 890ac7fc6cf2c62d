package io.strapline.bridge.publish.opcua;

import io.strapline.level.point.PointSettings;
import java.util.ArrayList;
import java.util.List;

/** All published variables of a measuring point, in the order of the address space. Stateless. */
final class PointVariables {

  private PointVariables() {}

  static List<VariableSpec> of(PointSettings settings) {
    List<VariableSpec> specs = new ArrayList<>(QuantityVariables.of(settings));
    specs.addAll(StateVariables.of(settings));
    specs.addAll(AlarmVariables.of(settings.alarms()));
    return List.copyOf(specs);
  }
}
