package io.strapline.bridge.app;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.model.PlantClock;
import io.strapline.bridge.model.Publisher;
import io.strapline.bridge.model.SampleSink;
import io.strapline.bridge.model.Source;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;

/** Sources and publishers that tell what is done to them, and fail when asked to. */
final class FakeParts implements PlantParts {

  private final List<String> events = new CopyOnWriteArrayList<>();
  private final List<Source> sources = new ArrayList<>();
  private final List<Publisher> publishers = new ArrayList<>();
  private @Nullable SampleSink sink;

  List<String> events() {
    return List.copyOf(events);
  }

  /** Returns the sink that the plant gave to the sources. */
  SampleSink sink() {
    return Objects.requireNonNull(sink);
  }

  FakeParts source(String name) {
    return source(name, Set.of(), () -> {});
  }

  FakeParts source(String name, Set<String> ownTime, Runnable onStart) {
    sources.add(
        new Source() {
          @Override
          public void start(SampleSink plantSink) {
            events.add("start " + name);
            sink = plantSink;
            onStart.run();
          }

          @Override
          public Set<String> tagsInOwnTime() {
            return ownTime;
          }

          @Override
          public void close() {
            events.add("close " + name);
          }
        });
    return this;
  }

  FakeParts publisher(String name) {
    return publisher(name, null, () -> {});
  }

  FakeParts publisher(String name, @Nullable IOException refused, Runnable onClose) {
    publishers.add(
        new Publisher() {
          @Override
          public void start() throws IOException {
            events.add("start " + name);
            if (refused != null) {
              throw refused;
            }
          }

          @Override
          public String endpoint() {
            return "fake://" + name;
          }

          @Override
          public void close() {
            events.add("close " + name);
            onClose.run();
          }
        });
    return this;
  }

  @Override
  public List<Source> sources(PlantSettings plant, PlantClock clock) {
    return sources;
  }

  @Override
  public List<Publisher> publishers(PlantSettings plant, PlantAccess access) {
    return publishers;
  }
}
