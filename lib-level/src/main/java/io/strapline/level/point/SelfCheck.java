package io.strapline.level.point;

import io.strapline.level.diagnosis.Baseline;
import io.strapline.level.diagnosis.Facts;
import io.strapline.level.diagnosis.SignalDiagnosis;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Diagnostic;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Feeds diagnosis with the samples of a point and tells what it means for the values. Stateful, one
 * thread at a time.
 */
final class SelfCheck {

  private static final Set<Cause> LOST =
      EnumSet.of(Cause.NO_RETURN, Cause.FAR_LIMIT, Cause.WEAK_RETURN, Cause.INVALID_CODE);

  private final SignalDiagnosis diagnosis;
  private List<Diagnostic> active = List.of();

  SelfCheck(PointSettings settings) {
    diagnosis = SignalDiagnosis.of(settings.diagnosis(), settings.baseline());
  }

  void accept(Sample sample, InputStage.Input input, Quality gate) {
    Reading distance = input.distance();
    boolean measured = !gate.isBad() && !distance.quality().cause().isHeld();
    active =
        diagnosis.accept(
            new Facts(
                sample.time(),
                measured ? OptionalDouble.of(distance.value()) : OptionalDouble.empty(),
                sample.strength(),
                current(input),
                LOST.contains(gate.cause())));
  }

  private static OptionalDouble current(InputStage.Input input) {
    Reading current = input.current();
    boolean failed = input.band() == null || input.band().isFailure();
    return current == null || failed ? OptionalDouble.empty() : OptionalDouble.of(current.value());
  }

  void expectFlow(boolean expected) {
    diagnosis.expectFlow(expected);
  }

  Baseline baseline() {
    return diagnosis.baseline();
  }

  List<Cause> causes() {
    return active.stream().map(Diagnostic::cause).toList();
  }

  /**
   * Returns how far the values may be trusted: UNCERTAIN with the first cause that is out of
   * specification; a call for maintenance leaves them GOOD.
   */
  Quality quality() {
    for (Diagnostic diagnostic : active) {
      if (diagnostic.status() == DiagnosticStatus.OUT_OF_SPECIFICATION) {
        return Quality.uncertain(diagnostic.cause());
      }
    }
    return Quality.GOOD;
  }
}
