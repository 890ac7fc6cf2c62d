package io.strapline.level.alarm;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The state machine of one alarm, driven by its condition alone. */
class AlarmTest {

  private static final Instant START = Instant.parse("2024-05-01T06:00:00Z");

  private static Instant at(double seconds) {
    return START.plus(Duration.ofNanos(Math.round(seconds * 1e9)));
  }

  private static Alarm alarm(double onDelay, double offDelay, boolean latching) {
    AlarmHandling handling = new AlarmHandling(2, latching);
    return Alarm.of(new AlarmLimit(AlarmKind.HIGH, 80, 2, onDelay, offDelay, handling));
  }

  private static AlarmState scan(Alarm alarm, double seconds, boolean condition) {
    alarm.scan(condition, !condition, at(seconds));
    return alarm.state();
  }

  private static AlarmState state(String shortName) {
    return Arrays.stream(AlarmState.values())
        .filter(state -> state.shortName().equals(shortName))
        .findFirst()
        .orElseThrow();
  }

  // alarm_transitions.csv: sources in its last columns

  private static final Set<String> OVERLAYS = Set.of("SHLVD", "DSUPR", "OOSRV");

  static Stream<CsvRow> transitions() {
    return CsvRows.read(AlarmTest.class, "alarm_transitions.csv").stream()
        .filter(row -> !isOverlay(row));
  }

  static Stream<CsvRow> overlays() {
    return CsvRows.read(AlarmTest.class, "alarm_transitions.csv").stream()
        .filter(AlarmTest::isOverlay);
  }

  private static boolean isOverlay(CsvRow row) {
    return OVERLAYS.contains(row.text("from")) || OVERLAYS.contains(row.text("to"));
  }

  @ParameterizedTest
  @MethodSource("transitions")
  void makesTheTransitionsOfTheTable(CsvRow row) {
    AlarmState from = state(row.text("from"));
    Alarm alarm = in(from, isLatching(row));
    assertEquals(from, alarm.state(), "the way to the state");
    long before = alarm.snapshot(false).occurrences();

    perform(row.text("event"), alarm);

    assertEquals(state(row.text("to")), alarm.state(), row::toString);
    String note = row.text("note");
    boolean announced = note.contains("annunciate") && !note.startsWith("same occurrence");
    long more = alarm.snapshot(false).occurrences() - before;
    assertEquals(announced ? 1 : 0, more, row::toString);
  }

  @Test
  void knowsEveryRowOfTheTransitionTable() {
    assertEquals(14, transitions().count());
    assertEquals(6, overlays().count());
  }

  // The rows on shelving, suppression by design and out of service, from each of the six states.

  @ParameterizedTest
  @MethodSource("overlays")
  void makesTheSuppressionsOfTheTable(CsvRow row) {
    String event = row.text("event");
    for (AlarmState from : AlarmState.values()) {
      Alarm alarm = in(from, from.shortName().startsWith("LAT"));
      String label = event + " from " + from;
      if (OVERLAYS.contains(row.text("to"))) {
        suppress(event, alarm);
        assertEquals(row.text("to"), alarm.snapshot(false).suppression().shortName(), label);
        assertEquals(from, alarm.state(), label + ": the state goes on beside");
      } else {
        suppress(row.text("from"), alarm);
        release(row.text("from"), alarm);
        assertEquals(Suppression.NONE, alarm.snapshot(false).suppression(), label);
        boolean announcedAnew = row.text("note").equals("an active condition enters UNACK");
        boolean stands = from == AlarmState.UNACKNOWLEDGED || from == AlarmState.ACKNOWLEDGED;
        AlarmState evaluated = announcedAnew && stands ? AlarmState.UNACKNOWLEDGED : from;
        assertEquals(evaluated, alarm.state(), label);
      }
    }
  }

  private static void suppress(String event, Alarm alarm) {
    switch (event) {
      case "shelve", "SHLVD" -> alarm.shelve(at(20), Duration.ofSeconds(60), false);
      case "suppress by design", "DSUPR" -> assertTrue(alarm.suppressByDesign(true));
      case "remove from service", "OOSRV" -> assertTrue(alarm.outOfService(true));
      default -> throw new IllegalStateException("unknown event " + event);
    }
  }

  private static void release(String suppression, Alarm alarm) {
    switch (suppression) {
      case "SHLVD" -> assertTrue(alarm.unshelve(at(30)));
      case "DSUPR" -> assertTrue(alarm.suppressByDesign(false));
      case "OOSRV" -> assertTrue(alarm.outOfService(false));
      default -> throw new IllegalStateException("unknown suppression " + suppression);
    }
  }

  private static boolean isLatching(CsvRow row) {
    boolean stated = row.text("event").contains(", latching");
    return stated || row.text("from").startsWith("LAT") || row.text("event").equals("reset");
  }

  /** Returns an alarm that has been led into this state, with delays of 3 s both ways. */
  private static Alarm in(AlarmState state, boolean latching) {
    Alarm alarm = alarm(3, 3, latching);
    switch (state) {
      case NORMAL -> scan(alarm, 0, false);
      case UNACKNOWLEDGED -> raise(alarm, 0);
      case ACKNOWLEDGED -> {
        raise(alarm, 0);
        alarm.acknowledge(at(4));
      }
      case RETURNED_UNACKNOWLEDGED, LATCHED_UNACKNOWLEDGED -> {
        raise(alarm, 0);
        clear(alarm, 10);
      }
      case LATCHED_ACKNOWLEDGED -> {
        raise(alarm, 0);
        clear(alarm, 10);
        alarm.acknowledge(at(14));
      }
    }
    return alarm;
  }

  private static void raise(Alarm alarm, double seconds) {
    scan(alarm, seconds, true);
    scan(alarm, seconds + 3, true);
  }

  private static void clear(Alarm alarm, double seconds) {
    scan(alarm, seconds, false);
    scan(alarm, seconds + 3, false);
  }

  private static void perform(String event, Alarm alarm) {
    if (event.equals("acknowledge")) {
      alarm.acknowledge(at(20));
    } else if (event.equals("reset")) {
      alarm.reset(at(20));
    } else if (event.startsWith("condition true")) {
      raise(alarm, 20);
    } else if (event.startsWith("condition false")) {
      clear(alarm, 20);
    } else {
      throw new IllegalStateException("unknown event " + event);
    }
  }

  // alarm_states.csv

  @ParameterizedTest
  @EnumSource(AlarmState.class)
  void hasTheActiveAndAcknowledgedMemoriesOfTheStateTable(AlarmState state) {
    CsvRow row =
        CsvRows.read(AlarmTest.class, "alarm_states.csv").stream()
            .filter(candidate -> candidate.text("short").equals(state.shortName()))
            .findFirst()
            .orElseThrow();

    assertEquals(row.text("ua_ActiveState").startsWith("True"), state.isActive(), row::toString);
    assertEquals(row.text("ua_AckedState").equals("True"), state.isAcknowledged(), row::toString);
  }

  // alarm_sequences.csv: two published timing diagrams, one scan a second

  @ParameterizedTest
  @CsvSource({"NONLATCH-ON3, 3, false, 23", "LATCH-ON1, 1, true, 15"})
  void followsTheTimingDiagram(String name, double onDelay, boolean latching, int scans) {
    List<CsvRow> rows =
        CsvRows.read(AlarmTest.class, "alarm_sequences.csv").stream()
            .filter(row -> row.text("sequence").equals(name))
            .toList();
    assertEquals(scans, rows.size());
    Alarm alarm = alarm(onDelay, 0, latching);
    for (CsvRow row : rows) {
      double second = row.number("t_s");
      // Operator's actions come before the condition of the scan.
      if (row.text("ack_pressed").equals("1")) {
        alarm.acknowledge(at(second));
      }
      if (row.text("reset_pressed").equals("1")) {
        alarm.reset(at(second));
      }
      scan(alarm, second, row.text("condition").equals("1"));
      assertEquals(state(row.text("state_after_scan")), alarm.state(), row::toString);
    }
  }

  // alarm_deadband_sequence.csv: high 80 %, deadband 2 %, on-delay 3 s, two scans a second

  @Test
  void followsTheTimingExampleWithADeadband() {
    List<CsvRow> rows = CsvRows.read(AlarmTest.class, "alarm_deadband_sequence.csv");
    AlarmLimit limit = new AlarmLimit(AlarmKind.HIGH, 80, 2, 3, 0, AlarmHandling.DEFAULT);
    AlarmLimit bare = new AlarmLimit(AlarmKind.HIGH, 80, 0, 0, 0, AlarmHandling.DEFAULT);
    Alarm alarm = Alarm.of(limit);
    Alarm raw = Alarm.of(bare);
    for (CsvRow row : rows) {
      double value = row.number("pv_percent");
      alarm.scan(limit.isSetBy(value), limit.isClearedBy(value), at(row.number("t_s")));
      raw.scan(bare.isSetBy(value), bare.isClearedBy(value), at(row.number("t_s")));

      String expected = row.text("alarm_high_80_deadband_2_ondelay_3s");
      assertEquals(expected.equals("1"), alarm.state().isActive(), row::toString);
      assertEquals(
          row.text("raw_no_deadband_no_delay").equals("1"), raw.state().isActive(), row::toString);
    }
    assertEquals(40, rows.size());
    assertEquals(1, alarm.snapshot(false).occurrences());
    assertEquals(rises(rows), raw.snapshot(false).occurrences());
  }

  private static long rises(List<CsvRow> rows) {
    String raw =
        rows.stream()
            .map(row -> row.text("raw_no_deadband_no_delay"))
            .collect(Collectors.joining());
    return Pattern.compile("01").matcher(raw).results().count();
  }

  // Delays

  @ParameterizedTest
  @CsvSource({"3", "0.3", "0.1", "59.7", "86400.1"})
  void raisesExactlyAtTheOnDelayAndNotANanosecondBefore(double delay) {
    Alarm alarm = alarm(delay, 0, false);
    scan(alarm, 0, true);

    alarm.scan(true, false, at(delay).minusNanos(1));
    assertEquals(AlarmState.NORMAL, alarm.state());
    assertEquals(AlarmState.UNACKNOWLEDGED, scan(alarm, delay, true));
    assertEquals(at(delay), alarm.snapshot(false).since());
  }

  @ParameterizedTest
  @CsvSource({"3", "0.3", "0.1", "59.7", "86400.1"})
  void clearsExactlyAtTheOffDelayAndNotANanosecondBefore(double delay) {
    Alarm alarm = alarm(0, delay, false);
    scan(alarm, 0, true);
    scan(alarm, 100, false);

    alarm.scan(false, true, at(100 + delay).minusNanos(1));
    assertEquals(AlarmState.UNACKNOWLEDGED, alarm.state());
    assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, scan(alarm, 100 + delay, false));
  }

  /** By time and not by scan count: the number of scans in between does not matter. */
  @Test
  void raisesAfterTheSameTimeHoweverOftenItIsScanned() {
    Map<Double, AlarmState> ends = new TreeMap<>();
    for (double step : new double[] {0.01, 0.5, 3}) {
      Alarm alarm = alarm(3, 0, false);
      for (int i = 0; i * step < 2.995; i++) {
        assertEquals(AlarmState.NORMAL, scan(alarm, i * step, true), "step " + step);
      }
      ends.put(step, scan(alarm, 3, true));
    }

    assertEquals(Set.of(AlarmState.UNACKNOWLEDGED), Set.copyOf(ends.values()));
  }

  @Test
  void startsTheDelayAnewWhenTheConditionBreaksOff() {
    Alarm alarm = alarm(3, 3, false);
    scan(alarm, 0, true);
    scan(alarm, 2, false);
    scan(alarm, 2.5, true);

    assertEquals(AlarmState.NORMAL, scan(alarm, 5.4, true));
    assertEquals(AlarmState.UNACKNOWLEDGED, scan(alarm, 5.5, true));
    scan(alarm, 6, false);
    scan(alarm, 8, true);
    scan(alarm, 8.5, false);
    assertEquals(AlarmState.UNACKNOWLEDGED, scan(alarm, 11.4, false));
    assertEquals(AlarmState.RETURNED_UNACKNOWLEDGED, scan(alarm, 11.5, false));
  }

  @Test
  void doesNotStretchADelayWhenTimeGoesBack() {
    Alarm alarm = alarm(3, 0, false);
    scan(alarm, 3600, true);
    scan(alarm, 10, true);

    assertEquals(AlarmState.UNACKNOWLEDGED, scan(alarm, 13, true));
  }

  @Test
  void startsTheDelayAnewAfterItWasHeldBack() {
    Alarm alarm = alarm(3, 0, false);
    scan(alarm, 0, true);
    alarm.holdBack(at(2));

    assertEquals(AlarmState.NORMAL, scan(alarm, 4, true));
    assertEquals(AlarmState.UNACKNOWLEDGED, scan(alarm, 7, true));
  }

  // Acknowledge and reset

  @Test
  void tellsWhetherThereWasAnythingToAcknowledge() {
    Alarm alarm = alarm(0, 0, false);
    assertFalse(alarm.acknowledge(at(0)));
    scan(alarm, 1, true);

    assertTrue(alarm.acknowledge(at(2)));
    assertFalse(alarm.acknowledge(at(3)), "acting on the edge");
    assertEquals(at(2), alarm.snapshot(false).since());
  }

  @Test
  void resetsNothingThatIsNotLatchedAndAcknowledged() {
    for (AlarmState state : AlarmState.values()) {
      boolean latched = state.shortName().startsWith("LAT");
      Alarm alarm = in(state, latched);

      assertEquals(state == AlarmState.LATCHED_ACKNOWLEDGED, alarm.reset(at(20)), state.name());
    }
  }

  @Test
  void countsActivationsAndNotChanges() {
    Alarm alarm = alarm(0, 0, false);
    scan(alarm, 0, true);
    scan(alarm, 1, false);
    scan(alarm, 2, true);
    alarm.acknowledge(at(3));
    scan(alarm, 4, false);

    assertEquals(2, alarm.snapshot(false).occurrences());
    assertEquals(AlarmState.NORMAL, alarm.state());
  }
}
