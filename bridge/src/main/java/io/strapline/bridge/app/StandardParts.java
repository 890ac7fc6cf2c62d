package io.strapline.bridge.app;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.Replay;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.Source;
import io.strapline.bridge.publish.modbus.ModbusPublisher;
import io.strapline.bridge.publish.opcua.OpcUaPublisher;
import io.strapline.bridge.simulate.SimulatedSource;
import io.strapline.bridge.source.modbus.ModbusSource;
import io.strapline.bridge.source.replay.ReplaySource;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The parts of a real plant, as configured. Stateless. */
public final class StandardParts implements PlantParts {

  @Override
  public List<Source> sources(PlantSettings plant, PlantClock clock) throws IOException {
    List<Source> sources = new ArrayList<>();
    List<PointConfig> simulated =
        plant.points().stream().filter(point -> point.source() instanceof Simulated).toList();
    if (!simulated.isEmpty()) {
      sources.add(new SimulatedSource(simulated, clock));
    }
    for (PointConfig point : plant.points()) {
      if (point.source() instanceof Replay replay) {
        sources.add(ReplaySource.open(point, replay, clock));
      }
    }
    sources.addAll(ModbusSource.of(plant.points(), clock));
    return sources;
  }

  @Override
  public List<Publisher> publishers(PlantSettings plant, PlantAccess access) {
    List<Publisher> publishers = new ArrayList<>();
    if (plant.opcUa().enabled()) {
      publishers.add(new OpcUaPublisher(plant, access));
    }
    if (plant.modbus().enabled()) {
      publishers.add(ModbusPublisher.of(plant, access));
    }
    return publishers;
  }
}
