package io.strapline.bridge.app;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.Source;
import java.io.IOException;
import java.util.List;

/** Makes the outer parts of a plant; nothing that it makes runs yet. */
public interface PlantParts {

  /**
   * Returns the sources of all points.
   *
   * @throws IOException naming the point and the file that a source needs and cannot have
   */
  List<Source> sources(PlantSettings plant, PlantClock clock) throws IOException;

  /**
   * Returns the publishers in the order in which they start.
   *
   * @throws IOException naming what a publisher needs and cannot have
   */
  List<Publisher> publishers(PlantSettings plant, PlantAccess access) throws IOException;
}
