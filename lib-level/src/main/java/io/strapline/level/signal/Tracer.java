package io.strapline.level.signal;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.StageTrace.Effect;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Writes down what the stages do to one sample, when somebody asked. One thread at a time. */
final class Tracer {

  private @Nullable List<StageTrace> lines;

  void start() {
    lines = new ArrayList<>();
  }

  List<StageTrace> take() {
    List<StageTrace> taken = lines == null ? List.of() : List.copyOf(lines);
    lines = null;
    return taken;
  }

  void gate(Quality gate, Reading distance) {
    if (lines == null) {
      return;
    }
    Quality own = distance.quality();
    if (!gate.isBad() && own.cause().isHeld()) {
      add(Stage.GATES, Effect.HELD, own.cause(), distance.value());
    } else {
      Effect effect = gate.isBad() ? Effect.REJECTED : Effect.PASSED;
      add(Stage.GATES, effect, gate.cause(), distance.value());
    }
  }

  void noReturn(Effect effect, Cause cause, double value) {
    add(Stage.NO_RETURN, effect, cause, value);
  }

  void obstruction(@Nullable Reading believed, boolean nothingToHold, double heldValue) {
    if (believed == null) {
      Effect effect = nothingToHold ? Effect.REJECTED : Effect.HELD;
      add(Stage.OBSTRUCTION, effect, Cause.OBSTRUCTION_HELD, heldValue);
    } else {
      boolean unconfirmed = believed.quality().cause() == Cause.JUMP_UNCONFIRMED;
      Cause cause = unconfirmed ? Cause.JUMP_UNCONFIRMED : Cause.NONE;
      add(Stage.OBSTRUCTION, Effect.PASSED, cause, believed.value());
    }
  }

  void passed(Stage stage, Reading output) {
    add(stage, Effect.PASSED, Cause.NONE, output.value());
  }

  void limited(Reading output) {
    add(Stage.RATE_LIMITS, Effect.LIMITED, Cause.RATE_LIMITED, output.value());
  }

  private void add(Stage stage, Effect effect, Cause cause, double value) {
    if (lines != null) {
      lines.add(new StageTrace(stage, effect, cause, value));
    }
  }

  static Set<Cause> union(Set<Cause> some, Set<Cause> others) {
    EnumSet<Cause> all = EnumSet.noneOf(Cause.class);
    all.addAll(some);
    all.addAll(others);
    return Set.copyOf(all);
  }
}
