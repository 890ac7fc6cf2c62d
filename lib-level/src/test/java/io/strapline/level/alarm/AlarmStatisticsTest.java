package io.strapline.level.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.alarm.AlarmTargets.Rating;
import io.strapline.level.reading.Reading;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

class AlarmStatisticsTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");
  private static final String HIGH = "LT-101 HIGH";

  private static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  private static AlarmStatistics statistics() {
    return AlarmStatistics.of(AlarmTargets.ISA_18_2, START);
  }

  // alarm_chatter.csv: sliding window of 60 s, three activations

  @Test
  void findsChatteringAsTheTableDoes() {
    AlarmStatistics statistics = statistics();
    List<CsvRow> rows = CsvRows.read(AlarmStatisticsTest.class, "alarm_chatter.csv");
    for (CsvRow row : rows) {
      Instant time = at(row.number("activation_t_s"));
      statistics.activated(HIGH, time);

      int recent = statistics.recentActivations(HIGH, time);
      assertEquals((int) row.number("activations_in_last_60_s"), recent, row::toString);
      Set<String> expected = row.text("chattering").equals("1") ? Set.of(HIGH) : Set.of();
      assertEquals(expected, statistics.at(time).nuisance().chattering(), row::toString);
    }
    assertEquals(9, rows.size());
  }

  @Test
  void countsTheActivationsOfEachAlarmByItself() {
    AlarmStatistics statistics = statistics();
    for (int i = 0; i < 6; i++) {
      statistics.activated("alarm " + i % 3, at(i));
    }

    assertEquals(Set.of(), statistics.at(at(6)).nuisance().chattering());
    assertEquals(0, statistics.recentActivations("another", at(6)));
  }

  // Stale: active for more than 24 h

  @Test
  void findsAStaleAlarmAfterMoreThanADay() {
    AlarmStatistics statistics = statistics();
    statistics.activated(HIGH, at(0));
    statistics.activated(HIGH, at(3600));
    double day = 86_400;

    assertEquals(Set.of(), statistics.at(at(day)).nuisance().stale());
    assertEquals(Set.of(HIGH), statistics.at(at(day).plusNanos(1)).nuisance().stale());
    assertTrue(statistics.at(at(day + 1)).nuisance().onTarget(), "fewer than five");
    statistics.returned(HIGH, at(day + 2));
    assertEquals(Set.of(), statistics.at(at(day + 3)).nuisance().stale());
  }

  @Test
  void isOffTargetFromTheFifthStaleAlarm() {
    AlarmStatistics statistics = statistics();
    for (int i = 0; i < 4; i++) {
      statistics.activated("alarm " + i, at(0));
    }
    assertTrue(statistics.at(at(90_000)).nuisance().onTarget());
    statistics.activated("alarm 4", at(90_000));
    assertFalse(statistics.at(at(180_000)).nuisance().onTarget());
  }

  // Flood: more than 10 in 10 min, until fewer than 5

  @Test
  void beginsAFloodWithTheEleventhAlarmInTenMinutes() {
    AlarmStatistics statistics = statistics();
    for (int i = 0; i < 10; i++) {
      statistics.activated("alarm " + i, at(i));
    }
    assertFalse(statistics.at(at(9)).flood().now());
    statistics.activated("alarm 10", at(600).minusNanos(1));

    assertTrue(statistics.at(at(600).minusNanos(1)).flood().now());
    assertEquals(11, statistics.at(at(600).minusNanos(1)).tenMinutes().latest());
  }

  @Test
  void doesNotBeginAFloodWhenTheFirstHasJustLeftTheWindow() {
    AlarmStatistics statistics = statistics();
    for (int i = 0; i < 10; i++) {
      statistics.activated("alarm " + i, at(i));
    }
    statistics.activated("alarm 10", at(600));

    assertFalse(statistics.at(at(600)).flood().now());
  }

  // Eleven at 0, 1 ... 10 s: it begins at 10 s; the seventh leaves at 606 s and four are left.
  @Test
  void endsAFloodAtTheMomentTheCountFallsBelowFive() {
    AlarmStatistics statistics = statistics();
    for (int i = 0; i < 11; i++) {
      statistics.activated("alarm " + i, at(i));
    }
    assertTrue(statistics.at(at(606).minusNanos(1)).flood().now());
    assertFalse(statistics.at(at(606)).flood().now());
    AlarmPerformance.Floods late = statistics.at(at(100_000)).flood();

    assertEquals(100 * 596.0 / 100_000, late.percentOfTime(), 1e-9);
    assertTrue(late.onTarget());
    assertFalse(statistics.at(at(59_600)).flood().percentOfTime() < 0.5);
  }

  /** Looked at once at the end or every second: the time in flood is the same. */
  @Test
  void tellsTheSameTimeInFloodHoweverOftenItIsAsked() {
    long seed = 77;
    Random random = new Random(seed);
    AlarmStatistics seldom = statistics();
    AlarmStatistics often = statistics();
    double now = 0;
    for (int i = 0; i < 2000; i++) {
      now += random.nextInt(20) == 0 ? 900 * random.nextDouble() : 60 * random.nextDouble();
      seldom.activated(HIGH, at(now));
      often.at(at(now - 5));
      often.at(at(now));
      often.activated(HIGH, at(now));
    }
    double expected = seldom.at(at(now + 3600)).flood().percentOfTime();

    assertEquals(expected, often.at(at(now + 3600)).flood().percentOfTime(), 1e-9, "seed " + seed);
    assertTrue(expected > 1 && expected < 99, "both happen: " + expected);
  }

  // Load

  @Test
  void countsTheLatestStretchesAndTheAverageSinceTheStart() {
    AlarmStatistics statistics = statistics();
    for (int i = 0; i < 12; i++) {
      statistics.activated("alarm " + i, at(300 * i));
    }
    AlarmPerformance performance = statistics.at(at(3599));

    assertEquals(2, performance.tenMinutes().latest(), "at 3000 s and 3300 s");
    assertEquals(12, performance.hour().latest());
    assertTrue(performance.hour().average().isEmpty(), "not an hour yet");
    assertEquals(Rating.MANAGEABLE, performance.hour().rating());
    assertEquals(12 / 5.998333, performance.tenMinutes().average().orElseThrow(), 1e-5);
    assertEquals(Rating.TOO_MANY, performance.tenMinutes().rating());
    AlarmPerformance later = statistics.at(at(7200));
    assertEquals(6, later.hour().average().orElseThrow(), 1e-12);
    assertEquals(Rating.ACCEPTABLE, later.hour().rating());
    assertEquals(0, later.hour().latest());
    assertEquals(12, later.day().latest());
  }

  /** Against plain counting over all events. */
  @Test
  void countsLikeAPlainSearch() {
    long seed = 78;
    Random random = new Random(seed);
    AlarmStatistics statistics = statistics();
    List<Double> events = new ArrayList<>();
    double now = 0;
    for (int i = 0; i < 500; i++) {
      now += 400 * random.nextDouble();
      statistics.activated(HIGH, at(now));
      events.add(now);
      AlarmPerformance performance = statistics.at(at(now));
      String told = "seed " + seed + ", event " + i;
      assertEquals(since(events, now, 600), performance.tenMinutes().latest(), told);
      assertEquals(since(events, now, 3600), performance.hour().latest(), told);
      assertEquals(since(events, now, 86_400), performance.day().latest(), told);
    }
  }

  private static int since(List<Double> events, double now, double window) {
    return (int) events.stream().filter(time -> now - time < window).count();
  }

  // Snapshots of an alarm group

  @Test
  void countsWhatAGroupAnnouncesAndNothingThatIsSuppressed() {
    AlarmLimit limit = new AlarmLimit(AlarmKind.HIGH, 8, 0.5, 0, 0, AlarmHandling.DEFAULT);
    AlarmGroup group = AlarmGroup.of(new AlarmSettings(List.of(limit), 0, AlarmHandling.DEFAULT));
    AlarmStatistics statistics = statistics();
    double[] levels = {5, 9, 9, 5, 9};
    for (int i = 0; i < levels.length; i++) {
      AlarmSnapshot alarm = group.judge(Reading.good(levels[i], at(i))).get(0);
      statistics.observe(HIGH, alarm, at(i));
    }
    assertEquals(2, statistics.at(at(5)).hour().latest());
    group.judge(Reading.good(5, at(6)));
    group.shelve(AlarmKind.HIGH, 60, at(6));
    statistics.observe(HIGH, group.judge(Reading.good(9, at(7))).get(0), at(7));

    assertEquals(2, statistics.at(at(8)).hour().latest());
    statistics.observe(HIGH, group.judge(Reading.good(9, at(66))).get(0), at(66));
    assertEquals(3, statistics.at(at(67)).hour().latest(), "it comes off the shelf and calls");
    group.outOfService(AlarmKind.HIGH, true);
    statistics.observe(HIGH, group.judge(Reading.good(9, at(68))).get(0), at(68));
    assertEquals(3, statistics.at(at(69)).hour().latest());
    assertEquals(
        Set.of(HIGH), statistics.at(at(100_000)).nuisance().stale(), "stale though suppressed");
  }

  @Test
  void takesATimeThatWentBackForTheLatest() {
    AlarmStatistics statistics = statistics();
    statistics.activated(HIGH, at(1000));
    statistics.activated(HIGH, at(0));

    assertEquals(2, statistics.recentActivations(HIGH, at(1059)));
  }
}
