package io.strapline.level.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.Sample;
import io.strapline.level.signal.AlarmBranch;
import io.strapline.level.signal.GateSettings;
import io.strapline.level.signal.NoReturnPolicy;
import io.strapline.level.signal.ObstructionSettings;
import io.strapline.level.signal.RateSettings;
import io.strapline.level.signal.SignalSettings;
import io.strapline.level.signal.SurfaceChecks;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DetectionDelayTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");
  private static final double RISE = 0.01;
  private static final double SET_POINT = 5;

  private static SignalSettings median(int samples) {
    return new SignalSettings(GateSettings.OPEN, NoReturnPolicy.hold(10), samples, 8, 30);
  }

  @Test
  void addsIntervalMedianAndWholeSamplesOfTheOnDelay() {
    DetectionDelay delay = DetectionDelay.of(median(5), 0.5, 1.2, 2);

    assertEquals(new DetectionDelay(0.5, 1, 1.5, 2), delay);
    assertEquals(5, delay.totalSeconds());
  }

  /** 0.3 is no whole multiple of 0.1 in binary. */
  /**
   * Limits given as a flow need no vessel here; alarms of the smooth branch wait for all stages.
   */
  @Test
  void addsWhatTheSurfaceChecksAdd() {
    ObstructionSettings.Doubt doubt = new ObstructionSettings.Doubt(0.3, 3, 5);
    SurfaceChecks gated =
        SurfaceChecks.NONE
            .with(new ObstructionSettings(doubt, doubt, 0.1, 20))
            .with(RateSettings.flow(0.1, 0.1, 0.03));

    assertEquals(20 + 1, DetectionDelay.of(median(5).with(gated), 0.5, 0, 0).filterSeconds());
    // 2 samples of 0.5 s, 7 half samples of 0.5 s, 30 s.
    SurfaceChecks smooth = gated.with(AlarmBranch.SMOOTH);
    assertEquals(
        20 + 1 + 1.75 + 30, DetectionDelay.of(median(5).with(smooth), 0.5, 0, 0).filterSeconds());
  }

  @Test
  void countsWholeSamplesInNanoseconds() {
    assertEquals(0.3, DetectionDelay.of(median(1), 0.1, 0.3, 0).onDelaySeconds(), 1e-12);
    assertEquals(0, DetectionDelay.of(median(1), 0.1, 0, 0).onDelaySeconds());
  }

  private static PointSettings point(SignalSettings signal, double onDelay) {
    AlarmLimit limit =
        new AlarmLimit(AlarmKind.HIGH_HIGH, SET_POINT, 0.1, onDelay, 0, AlarmHandling.DEFAULT);
    return PointSettings.builder("LT-202")
        .mounting(Mounting.plumb(10))
        .signal(signal)
        .alarms(new AlarmSettings(List.of(limit), 0, AlarmHandling.DEFAULT))
        .build();
  }

  /** Returns the seconds from the passing of the set point to the alarm, on a rising ramp. */
  private static double measured(PointSettings settings, double interval, double passing) {
    MeasuringPoint point = MeasuringPoint.of(settings, START);
    for (int i = 0; i < 10_000; i++) {
      double seconds = i * interval;
      Instant time = START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
      double level = SET_POINT + RISE * (seconds - passing);
      List<AlarmSnapshot> alarms = point.accept(Sample.distance(time, 10 - level)).alarms();
      if (alarms.get(0).state().isActive()) {
        return seconds - passing;
      }
    }
    throw new IllegalStateException("no alarm in 10 000 samples");
  }

  /**
   * The whole chain on a ramp: the alarm never comes later than told, and the worst place of the
   * set point between two samples comes within a hundredth of an interval of it.
   */
  @ParameterizedTest
  @CsvSource({
    "1, 0.5, 0",
    "5, 0.5, 0",
    "5, 0.5, 1.2",
    "9, 1, 3",
    "1, 0.1, 0.3",
    "99, 0.25, 0",
    "3, 2, 1"
  })
  void isTheLongestTimeFromTheSetPointToTheAlarm(int samples, double interval, double onDelay) {
    SignalSettings signal = median(samples);
    double told = DetectionDelay.of(signal, interval, onDelay, 0).totalSeconds();
    double worst = 0;
    for (int part = 0; part < 100; part++) {
      double passing = 200 * interval + interval * (part + 0.005) / 100;
      worst = Math.max(worst, measured(point(signal, onDelay), interval, passing));
    }

    assertTrue(worst <= told + 1e-9, "worst " + worst + " s, told " + told + " s");
    assertTrue(worst >= told - 0.01 * interval, "worst " + worst + " s, told " + told + " s");
  }
}
