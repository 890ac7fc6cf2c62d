package io.strapline.bridge.publish.opcua.alarms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import io.strapline.bridge.model.PlantAccess;
import io.strapline.bridge.publish.opcua.TestPlant;
import io.strapline.bridge.publish.opcua.alarms.Conditions.By;
import io.strapline.bridge.publish.opcua.alarms.Conditions.Verdict;
import io.strapline.bridge.testing.Eventually;
import io.strapline.level.alarm.AlarmHandling;
import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmLimit;
import io.strapline.level.alarm.AlarmSettings;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class ConditionEngineTest {

  private static final String TAG = "LT-7";
  private static final String LEVEL = TAG + ".LevelAlarm";
  private static final String SIGNAL = TAG + ".SignalAlarm";
  private static final By ANNA = new By("operator-1", "seen");

  private final List<ConditionState> announced = new CopyOnWriteArrayList<>();
  private final AtomicInteger losses = new AtomicInteger();
  private TestPlant plant;
  private ConditionEngine engine;

  @BeforeEach
  void start() {
    // Reference point at 10 m: a distance of d is a level of 10 - d.
    PointSettings settings =
        PointSettings.builder(TAG)
            .mounting(Mounting.plumb(10))
            .alarms(new AlarmSettings(limits(), 0, new AlarmHandling(4, false)))
            .build();
    plant = TestPlant.of(Path.of("data"), List.of(TestPlant.point("Tank", "Yard", settings)));
    plant.distance(TAG, 5, 1);
    engine = engine(1_000);
    engine.start();
  }

  private static List<AlarmLimit> limits() {
    return List.of(
        new AlarmLimit(AlarmKind.HIGH_HIGH, 9, 0, 0, 0, new AlarmHandling(1, true)),
        new AlarmLimit(AlarmKind.HIGH, 8, 0, 0, 0, new AlarmHandling(3, false)),
        new AlarmLimit(AlarmKind.LOW, 2, 0, 0, 0, new AlarmHandling(3, false)));
  }

  private ConditionEngine engine(int capacity) {
    PlantAccess access = plant.access();
    ConditionEngine made =
        new ConditionEngine(
            plant.settings().points().stream().flatMap(p -> ConditionSpec.of(p).stream()).toList(),
            new ConditionEngine.Surroundings(
                tag -> plant.store().view().point(tag).orElseThrow(),
                access.operations(),
                access.clock()::instant),
            new Recorder(),
            capacity);
    plant.store().listen(made::offer);
    return made;
  }

  private final class Recorder implements Conditions.Listener {

    @Override
    public void changed(ConditionState state, boolean told) {
      if (told) {
        announced.add(state);
      }
    }

    @Override
    public void refreshRequired() {
      losses.incrementAndGet();
    }
  }

  @AfterEach
  void close() {
    engine.close();
  }

  private ConditionState last(int count) {
    Eventually.holds(count + " notifications of " + announced, () -> announced.size() >= count);
    assertEquals(count, announced.size(), announced::toString);
    return announced.get(count - 1);
  }

  private ConditionState state(String id) {
    return engine.states().stream()
        .filter(state -> state.spec().id().equals(id))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void showsTheMostExtremeLimitThatStands() {
    plant.distance(TAG, 1.5, 2);
    assertEquals(AlarmKind.HIGH, last(1).leading().orElseThrow());
    assertEquals(500, last(1).severity()); // priority 3
    plant.distance(TAG, 0.5, 3);
    assertEquals(AlarmKind.HIGH_HIGH, last(2).leading().orElseThrow());
    assertEquals(900, last(2).severity()); // priority 1
    assertEquals(500, last(2).parts().lastSeverity());
    assertEquals(TestPlant.at(3), last(2).parts().since().active());
    assertTrue(last(2).retained());
  }

  @Test
  void staysOfInterestUntilAcknowledgedAndGone() {
    plant.distance(TAG, 1.5, 2);
    String event = last(1).notice().eventId();
    plant.distance(TAG, 5, 3);
    assertFalse(last(2).active());
    assertTrue(last(2).retained(), "gone, but nobody has acknowledged it");
    assertEquals(Verdict.DONE, engine.acknowledge(LEVEL, event, ANNA));
    assertFalse(last(3).retained());
    assertEquals("seen", last(3).remark().text());
    assertEquals("operator-1", last(3).remark().by());
  }

  @Test
  void aMovingLevelIsNoNews() {
    plant.distance(TAG, 1.5, 2);
    last(1);
    plant.distance(TAG, 1.4, 3);
    plant.distance(TAG, 1.3, 4);
    assertEquals(Verdict.EVENT_UNKNOWN, engine.comment(LEVEL, "00", ANNA)); // all before is done
    last(1);
  }

  @Test
  void acknowledgesWhatTheEventShowedAndNothingLater() {
    plant.distance(TAG, 1.5, 2);
    String high = last(1).notice().eventId();
    plant.distance(TAG, 0.5, 3);
    last(2);
    assertEquals(Verdict.DONE, engine.acknowledge(LEVEL, high, ANNA));
    assertEquals(AlarmState.ACKNOWLEDGED, plant.state(TAG, AlarmKind.HIGH));
    assertEquals(AlarmState.UNACKNOWLEDGED, plant.state(TAG, AlarmKind.HIGH_HIGH));
    assertFalse(last(3).acknowledged());
    assertEquals(Verdict.EVENT_UNKNOWN, engine.acknowledge(LEVEL, high, ANNA));
  }

  @Test
  void anEventOfAnEarlierOccurrenceDoesNotCount() {
    plant.distance(TAG, 1.5, 2);
    String first = last(1).notice().eventId();
    plant.distance(TAG, 5, 3);
    plant.distance(TAG, 1.5, 4);
    last(3);
    assertEquals(Verdict.EVENT_UNKNOWN, engine.acknowledge(LEVEL, first, ANNA));
    assertEquals(AlarmState.UNACKNOWLEDGED, plant.state(TAG, AlarmKind.HIGH));
  }

  @Test
  void remembersFiftyEvents() {
    plant.distance(TAG, 1.5, 2);
    String first = last(1).notice().eventId();
    for (int i = 2; i <= 50; i++) {
      assertEquals(Verdict.DONE, engine.comment(LEVEL, last(i - 1).notice().eventId(), ANNA));
    }
    assertEquals(Verdict.DONE, engine.comment(LEVEL, first, ANNA));
    assertEquals(Verdict.EVENT_UNKNOWN, engine.comment(LEVEL, first, ANNA));
  }

  @Test
  void saysWhatCannotBeDone() {
    String id = state(LEVEL).notice().eventId();
    assertEquals(Verdict.ALREADY_ACKNOWLEDGED, engine.acknowledge(LEVEL, id, ANNA));
    assertEquals(Verdict.UNKNOWN, engine.acknowledge("LT-8.LevelAlarm", id, ANNA));
    assertEquals(Verdict.ALREADY_ENABLED, engine.enable(LEVEL, true, ANNA));
    assertEquals(Verdict.NOT_RESETTABLE, engine.reset(LEVEL, ANNA));
    assertTrue(plant.operators().isEmpty());
  }

  @Test
  void anEmptyCommentLeavesTheLastOne() {
    String id = state(LEVEL).notice().eventId();
    engine.comment(LEVEL, id, new By("operator-1", "first"));
    engine.comment(LEVEL, id, new By("operator-2", ""));
    assertEquals("first", last(2).remark().text());
    assertEquals("operator-2", last(2).remark().by());
  }

  @Test
  void tellsNothingWhileDisabledButGoesOnFollowing() {
    assertEquals(Verdict.DONE, engine.enable(LEVEL, false, ANNA));
    assertFalse(last(1).enabled());
    plant.distance(TAG, 0.5, 2);
    assertEquals(Verdict.DISABLED, engine.acknowledge(LEVEL, last(1).notice().eventId(), ANNA));
    assertEquals(AlarmState.UNACKNOWLEDGED, plant.state(TAG, AlarmKind.HIGH_HIGH));
    assertEquals(Verdict.DONE, engine.enable(LEVEL, true, ANNA));
    assertTrue(last(2).retained());
    assertEquals(AlarmKind.HIGH_HIGH, last(2).leading().orElseThrow());
  }

  @Test
  void resetsALatchedAlarmOnceItIsAcknowledged() {
    plant.distance(TAG, 0.5, 2);
    plant.distance(TAG, 5, 3);
    assertTrue(last(2).latched());
    assertTrue(last(2).active(), "held by latching");
    assertEquals(Verdict.NOT_RESETTABLE, engine.reset(LEVEL, ANNA));
    engine.acknowledge(LEVEL, last(2).notice().eventId(), ANNA);
    assertEquals(Verdict.DONE, engine.reset(LEVEL, ANNA));
    Eventually.holds("normal again", () -> !state(LEVEL).retained());
    assertEquals(AlarmState.NORMAL, plant.state(TAG, AlarmKind.HIGH_HIGH));
  }

  @Test
  void aStandingLimitLeadsBeforeALatchedOne() {
    plant.distance(TAG, 0.5, 2); // high-high and high
    plant.distance(TAG, 9, 3); // level 1 m: low; high-high is held by latching
    assertEquals(AlarmKind.LOW, last(2).leading().orElseThrow());
    assertEquals(900, last(2).severity(), "the latched one has the highest severity");
  }

  @Test
  void isSuppressedOnceAllThatHasRisenIs() {
    plant.distance(TAG, 0.5, 2); // high-high and high
    assertFalse(last(1).suppressed());
    plant.outOfService(TAG, AlarmKind.HIGH, true, 3);
    assertEquals(0, engine.acknowledgeAll("LT-8", ANNA)); // all before is done
    assertFalse(state(LEVEL).suppressed(), "the high-high alarm is not out of service");
    plant.outOfService(TAG, AlarmKind.HIGH_HIGH, true, 4);
    Eventually.holds("suppressed", () -> state(LEVEL).suppressed());
    plant.outOfService(TAG, AlarmKind.HIGH_HIGH, false, 5);
    Eventually.holds("in service again", () -> !state(LEVEL).suppressed());
  }

  @Test
  void acknowledgesAllOfAPoint() {
    plant.distance(TAG, 0.5, 2);
    plant.tick(TAG, 4_000);
    last(3); // level, then signal, and the quality of the level that stands
    assertEquals(3, engine.acknowledgeAll(TAG, ANNA));
    assertEquals(0, engine.acknowledgeAll(TAG, ANNA));
    assertEquals(AlarmState.ACKNOWLEDGED, plant.state(TAG, AlarmKind.BAD_SIGNAL));
    assertEquals(300, state(SIGNAL).severity()); // priority 4
  }

  @Test
  void eventIdsAreNeverTheSame() {
    plant.distance(TAG, 1.5, 2);
    plant.distance(TAG, 5, 3);
    assertNotEquals(last(2).notice().eventId(), announced.get(0).notice().eventId());
    assertEquals(32, last(2).notice().eventId().length());
  }

  @Test
  void aFloodNeverHoldsUpTheMeasurementAndEndsInTheLatestState() throws Exception {
    ConditionEngine small = engine(3);
    CountDownLatch go = new CountDownLatch(1);
    assertTrue(
        small.refresh(
            states -> {
              try {
                go.await();
              } catch (InterruptedException closed) {
                Thread.currentThread().interrupt();
              }
            }));
    small.start();
    for (int i = 0; i < 100; i++) {
      plant.distance(TAG, i % 2 == 0 ? 1.5 : 5, 10 + i); // returns although nobody takes it
    }
    plant.distance(TAG, 1.5, 200);
    go.countDown();
    Eventually.holds("the loss is told", () -> losses.get() > 0);
    assertEquals(AlarmKind.HIGH, small.states().get(0).leading().orElseThrow());
    assertEquals(plant.state(TAG, AlarmKind.HIGH), AlarmState.UNACKNOWLEDGED);
    small.close();
  }

  @Test
  void needsNoOpcUaLibrary() {
    ArchRuleDefinition.noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.eclipse.milo..")
        .check(
            new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages("io.strapline.bridge.publish.opcua.alarms"));
  }
}
