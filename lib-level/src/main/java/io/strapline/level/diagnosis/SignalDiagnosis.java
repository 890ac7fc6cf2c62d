package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Diagnostic;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Watches the samples of one measuring point for what they tell of the transmitter, its window, its
 * loop and its range. Stateful, one thread at a time. Every symptom has to stand for its hold-off
 * time before it is told. A diagnosis is a suspicion: it asks somebody to look.
 */
public final class SignalDiagnosis {

  private final @Nullable StrengthWatch strength;
  private final @Nullable NoiseWatch noise;
  private final @Nullable StuckWatch stuck;
  private final Baseline kept;
  private final List<Watch> watches;

  private SignalDiagnosis(DiagnosisSettings settings, Baseline kept) {
    this.kept = kept;
    strength = settings.strength().map(check -> new StrengthWatch(check, kept)).orElse(null);
    noise = settings.noise().map(check -> new NoiseWatch(check, kept)).orElse(null);
    stuck = settings.stuck().map(StuckWatch::new).orElse(null);
    List<Watch> all = new ArrayList<>();
    add(all, strength);
    add(all, noise);
    add(all, stuck);
    settings.rate().ifPresent(check -> all.add(new RateWatch(check)));
    settings.current().ifPresent(check -> all.add(new CurrentWatch(check)));
    settings.reach().ifPresent(check -> all.add(new ReachWatch(check)));
    watches = List.copyOf(all);
  }

  private static void add(List<Watch> watches, @Nullable Watch watch) {
    if (watch != null) {
      watches.add(watch);
    }
  }

  /**
   * Returns a diagnosis that has seen nothing yet.
   *
   * @param baseline what was kept from before; {@link Baseline#NOTHING} to learn anew
   */
  public static SignalDiagnosis of(DiagnosisSettings settings, Baseline baseline) {
    Check.present("SignalDiagnosis.settings", settings, "give DiagnosisSettings.NONE for none");
    Check.present("SignalDiagnosis.baseline", baseline, "give Baseline.NOTHING to learn anew");
    return new SignalDiagnosis(settings, baseline);
  }

  /** Takes what the next sample tells, in time order, and returns what is active. */
  public List<Diagnostic> accept(Facts facts) {
    watches.forEach(watch -> watch.accept(facts));
    return diagnostics();
  }

  /** Tells whether material should flow in or out now, so that the value should move. */
  public void expectFlow(boolean expected) {
    if (stuck != null) {
      stuck.expectFlow(expected);
    }
  }

  /** Returns what is active, each with its NE 107 status, its cause and since when. */
  public List<Diagnostic> diagnostics() {
    return watches.stream().flatMap(Watch::diagnostics).toList();
  }

  /** Returns what has been learned, to be kept over a restart. */
  public Baseline baseline() {
    return new Baseline(
        strength == null ? kept.strength() : strength.strength(),
        strength == null ? kept.strengthSeconds() : strength.learnedSeconds(),
        noise == null ? kept.noiseMetres() : noise.metres(),
        noise == null ? kept.noiseSeconds() : noise.learnedSeconds());
  }
}
