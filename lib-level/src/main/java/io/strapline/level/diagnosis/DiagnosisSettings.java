package io.strapline.level.diagnosis;

import io.strapline.level.internal.Check;
import java.util.Optional;

/**
 * What is looked for, each check optional. Immutable.
 *
 * @param strength weak and falling returns
 * @param noise scatter
 * @param stuck a value that stands still
 * @param rate speeds that no surface has
 * @param current a loop at its end
 * @param reach a range shorter than the vessel
 */
public record DiagnosisSettings(
    Optional<StrengthCheck> strength,
    Optional<NoiseCheck> noise,
    Optional<StuckCheck> stuck,
    Optional<RateCheck> rate,
    Optional<CurrentCheck> current,
    Optional<ReachCheck> reach) {

  /** Nothing is looked for. */
  public static final DiagnosisSettings NONE =
      new DiagnosisSettings(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());

  /** Checks that all parts are there. */
  public DiagnosisSettings {
    String none = "give Optional.empty() for no such check";
    Check.present("DiagnosisSettings.strength", strength, none);
    Check.present("DiagnosisSettings.noise", noise, none);
    Check.present("DiagnosisSettings.stuck", stuck, none);
    Check.present("DiagnosisSettings.rate", rate, none);
    Check.present("DiagnosisSettings.current", current, none);
    Check.present("DiagnosisSettings.reach", reach, none);
  }

  /** Returns these settings with a check of the strength. */
  public DiagnosisSettings with(StrengthCheck check) {
    return new DiagnosisSettings(Optional.of(check), noise, stuck, rate, current, reach);
  }

  /** Returns these settings with a check of the noise. */
  public DiagnosisSettings with(NoiseCheck check) {
    return new DiagnosisSettings(strength, Optional.of(check), stuck, rate, current, reach);
  }

  /** Returns these settings with a check for a value that stands still. */
  public DiagnosisSettings with(StuckCheck check) {
    return new DiagnosisSettings(strength, noise, Optional.of(check), rate, current, reach);
  }

  /** Returns these settings with a check of the speed. */
  public DiagnosisSettings with(RateCheck check) {
    return new DiagnosisSettings(strength, noise, stuck, Optional.of(check), current, reach);
  }

  /** Returns these settings with a check of the loop current. */
  public DiagnosisSettings with(CurrentCheck check) {
    return new DiagnosisSettings(strength, noise, stuck, rate, Optional.of(check), reach);
  }

  /** Returns these settings with a check of the range. */
  public DiagnosisSettings with(ReachCheck check) {
    return new DiagnosisSettings(strength, noise, stuck, rate, current, Optional.of(check));
  }
}
