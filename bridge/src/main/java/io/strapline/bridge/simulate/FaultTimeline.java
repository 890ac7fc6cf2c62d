package io.strapline.bridge.simulate;

import io.strapline.bridge.config.SourceSettings.Event;
import java.util.List;
import java.util.Optional;

/**
 * Which fault a simulated transmitter has at a time; of several at once the first in the list. An
 * event holds from its start, included, to its end, excluded. Immutable.
 */
final class FaultTimeline {

  private final List<Event> events;

  FaultTimeline(List<Event> events) {
    this.events = List.copyOf(events);
  }

  /** Returns the fault so many seconds after the start of the run. */
  Optional<Event.Fault> faultAt(double elapsedSeconds) {
    return events.stream()
        .filter(event -> holds(event, elapsedSeconds))
        .map(Event::fault)
        .findFirst();
  }

  private static boolean holds(Event event, double elapsedSeconds) {
    double since = elapsedSeconds - event.atSeconds();
    if (!(since >= 0)) {
      return false;
    }
    double period = event.everySeconds().orElse(Double.POSITIVE_INFINITY);
    return (period > 0 ? since % period : since) < event.forSeconds();
  }
}
