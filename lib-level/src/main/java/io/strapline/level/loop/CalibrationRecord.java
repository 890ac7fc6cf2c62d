package io.strapline.level.loop;

import io.strapline.level.internal.Check;
import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/**
 * The calibration of one device: as found before anything was touched, as left afterwards.
 * Immutable. The as-found errors tell how wrong past readings may have been (open textbook "Lessons
 * In Industrial Instrumentation", section 18.3.2, through a course file).
 *
 * @param tag of the device, not blank
 * @param asFound before any adjustment
 * @param adjusted after adjustment, over the same span; empty when nothing was adjusted
 * @param tolerance by which both are judged
 */
public record CalibrationRecord(
    String tag,
    CalibrationRun asFound,
    Optional<CalibrationRun> adjusted,
    CalibrationTolerance tolerance) {

  /** Checks that all parts are there and belong together. */
  public CalibrationRecord {
    tag = Check.text("CalibrationRecord.tag", tag, "give the tag of the device").strip();
    Check.present("CalibrationRecord.asFound", asFound, "record it before any adjustment");
    Check.present("CalibrationRecord.adjusted", adjusted, "give Optional.empty() for none");
    Check.present("CalibrationRecord.tolerance", tolerance, "give the tolerance");
    if (adjusted.isPresent() && !adjusted.get().span().equals(asFound.span())) {
      throw Check.error(
          "CalibrationRecord.adjusted.span",
          adjusted.get().span().toString(),
          "",
          "must be the one of asFound (" + asFound.span() + ")",
          "make two records when the range was changed");
    }
  }

  /** What the record says. */
  public enum Verdict {
    /** Good as found, not adjusted. */
    PASSED,
    /** Good as found, adjusted all the same, good as left. */
    PASSED_AND_ADJUSTED,
    /** Out of tolerance as found, good as left: past readings are in doubt. */
    FAILED_AS_FOUND_CORRECTED,
    /** Out of tolerance as left: the device must not go back into service. */
    FAILED_AS_LEFT
  }

  /**
   * One line of the record.
   *
   * @param reading what was read
   * @param errorPercent of span, rounded by the tolerance's rule
   * @param passes whether it is within the tolerance
   */
  public record Row(CalibrationReading reading, BigDecimal errorPercent, boolean passes) {}

  /** Returns the run after adjustment; the one as found when nothing was adjusted. */
  public CalibrationRun asLeft() {
    return adjusted.orElse(asFound);
  }

  /** Returns the lines of a run, judged. */
  public List<Row> rows(CalibrationRun run) {
    return run.readings().stream().map(reading -> row(run, reading)).toList();
  }

  private Row row(CalibrationRun run, CalibrationReading reading) {
    BigDecimal error = run.errorPercent(reading);
    return new Row(reading, tolerance.rounded(error), tolerance.passes(error));
  }

  private boolean passes(CalibrationRun run) {
    return rows(run).stream().allMatch(Row::passes);
  }

  /** Returns what the record says; a run passes when each of its readings does. */
  public Verdict verdict() {
    if (!passes(asLeft())) {
      return Verdict.FAILED_AS_LEFT;
    }
    if (!passes(asFound)) {
      return Verdict.FAILED_AS_FOUND_CORRECTED;
    }
    return adjusted.isPresent() ? Verdict.PASSED_AND_ADJUSTED : Verdict.PASSED;
  }
}
