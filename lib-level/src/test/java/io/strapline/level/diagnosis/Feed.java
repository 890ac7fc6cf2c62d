package io.strapline.level.diagnosis;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** A diagnosis fed by hand. */
final class Feed {

  static final Instant START = Instant.parse("2026-03-01T06:00:00Z");
  static final Learning HOUR = new Learning(3600, 36_000);

  private final SignalDiagnosis diagnosis;

  Feed(DiagnosisSettings settings) {
    this(settings, Baseline.NOTHING);
  }

  Feed(DiagnosisSettings settings, Baseline baseline) {
    diagnosis = SignalDiagnosis.of(settings, baseline);
  }

  static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  SignalDiagnosis diagnosis() {
    return diagnosis;
  }

  List<Cause> give(Facts facts) {
    return diagnosis.accept(facts).stream().map(Diagnostic::cause).toList();
  }

  List<Cause> distance(double seconds, double metres) {
    return give(Facts.distance(at(seconds), metres));
  }
}
