package io.strapline.level.point;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.StatusPrecedence;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Remembers since when each cause has been active. One thread at a time. */
final class DiagnosticLog {

  private final Map<Cause, Instant> since = new EnumMap<>(Cause.class);
  private final StatusPrecedence precedence;

  DiagnosticLog(StatusPrecedence precedence) {
    this.precedence = precedence;
  }

  /** Takes the causes that are active now and returns them as diagnostics, the prevailing first. */
  List<Diagnostic> update(Set<Cause> active, Instant time) {
    since.keySet().retainAll(active);
    active.forEach(cause -> since.putIfAbsent(cause, time));
    return since.isEmpty() ? List.of() : sorted(since.entrySet());
  }

  private List<Diagnostic> sorted(Collection<Map.Entry<Cause, Instant>> entries) {
    List<Diagnostic> list = new ArrayList<>(entries.size());
    entries.forEach(
        entry ->
            list.add(new Diagnostic(entry.getKey().status(), entry.getKey(), entry.getValue())));
    list.sort(Comparator.comparingInt(diagnostic -> precedence.rank(diagnostic.status())));
    return List.copyOf(list);
  }
}
