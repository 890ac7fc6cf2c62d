package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.signal.ObstructionSettings.Doubt;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ObstructionGateTest {

  private static final Quality UNCONFIRMED = Quality.uncertain(Cause.JUMP_UNCONFIRMED);

  /** Nearer by 0.3 m: 3 of 5; farther by 0.5 m: 2 of 3; band 0.1 m; accepted after 20 s. */
  private static ObstructionGate gate() {
    return ObstructionGate.of(
        new ObstructionSettings(new Doubt(0.3, 3, 5), new Doubt(0.5, 2, 3), 0.1, 20));
  }

  private static @Nullable Reading feed(ObstructionGate gate, double seconds, double metres) {
    return gate.apply(Reading.good(metres, at(seconds)));
  }

  private static void believes(ObstructionGate gate, double seconds, double metres) {
    assertEquals(Reading.good(metres, at(seconds)), feed(gate, seconds, metres));
  }

  private static void rejects(ObstructionGate gate, double seconds, double metres) {
    assertNull(feed(gate, seconds, metres), seconds + " s, " + metres + " m");
  }

  @Test
  void believesTheFirstReadingAndEveryOneNearToIt() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    believes(gate, 1, 7.75);
    believes(gate, 2, 7.5);
    believes(gate, 3, 8);
    believes(gate, 4, 7.75);
  }

  @Test
  void rejectsASpeckOfDust() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 1, 2);
    believes(gate, 2, 8);
    rejects(gate, 3, 3);
    rejects(gate, 4, 5);
    believes(gate, 5, 8.1);
  }

  @Test
  void believesTheThirdOfFiveNearerReadingsThatAgree() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 1, 5);
    rejects(gate, 2, 1);
    rejects(gate, 3, 5.05);
    believes(gate, 4, 5.09);
  }

  @Test
  void countsFartherReadingsByTheirOwnNumbers() {
    ObstructionGate gate = gate();
    believes(gate, 0, 4);
    believes(gate, 1, 4.5);
    rejects(gate, 2, 5.01);
    believes(gate, 3, 5.02);
  }

  @Test
  void countsNoReadingThatLiesOutsideTheBand() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 1, 5);
    rejects(gate, 2, 5.101);
    rejects(gate, 3, 5.202);
  }

  /** Pains F11: the reading jumps from 7.5 to 22 and stays. E5: a rat-hole that collapses. */
  @ParameterizedTest
  @CsvSource({"7.5, 22, 1", "12, 9, 2"})
  void followsARealJumpAfterMSamples(double before, double after, double expected) {
    ObstructionGate gate = gate();
    believes(gate, 0, before);
    double late = -1;
    for (int i = 0; i < 10 && late < 0; i++) {
      late = feed(gate, 10 + i, after) == null ? -1 : i;
    }

    assertEquals(expected, late);
    assertEquals(expected, gate.stepSeconds(1, before, after));
  }

  /** Readings all over the place: nothing agrees, and yet nothing is held for longer than 20 s. */
  @Test
  void takesOverAReadingWithoutAgreementAfterTheStatedTimeAndSaysSo() {
    ObstructionGate gate = gate();
    believes(gate, 0, 20);
    for (int i = 1; i <= 20; i++) {
      rejects(gate, i, i * 0.9);
    }
    Reading taken = feed(gate, 21, 15);

    assertEquals(new Reading(15, UNCONFIRMED, at(21)), taken);
    believes(gate, 22, 15.1);
  }

  @Test
  void takesOverTheLastReadingByTheClockWhenNoOtherComes() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 1, 5);
    rejects(gate, 4, 5);

    assertNull(gate.tick(at(20.999999999)));
    assertEquals(new Reading(5, UNCONFIRMED, at(21)), gate.tick(at(500)));
    assertNull(gate.tick(at(600)));
    believes(gate, 601, 5);
  }

  @Test
  void startsTheTimeAnewAfterEachBelievedReading() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    for (int i = 1; i < 100; i += 2) {
      rejects(gate, i, 0.05 * i);
      believes(gate, i + 1, 8);
    }
  }

  /** One sample a minute: three that agree would take two minutes; the time comes first. */
  @Test
  void acceptsByTimeWhenSamplesAreRare() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 60, 5);

    assertEquals(new Reading(5, UNCONFIRMED, at(120)), feed(gate, 120, 5));
    assertEquals(20, gate.stepSeconds(60, 8, 5));
  }

  @Test
  void countsNoEvidenceOlderThanTheStatedTime() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 1, 5);
    rejects(gate, 2, 5);
    believes(gate, 3, 8);
    rejects(gate, 23, 5);
    rejects(gate, 24, 5);
    believes(gate, 25, 5);
  }

  @Test
  void countsARepeatedSampleOnce() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    for (int i = 0; i < 10; i++) {
      rejects(gate, 1, 5);
    }
    rejects(gate, 2, 5);
    believes(gate, 3, 5);
  }

  @Test
  void holdsForNoLongerWhenTheClockIsSetBack() {
    ObstructionGate gate = gate();
    believes(gate, 3600, 8);
    rejects(gate, 3601, 5);
    rejects(gate, 2, 3);

    assertNotNull(gate.tick(at(22)));
  }

  @Test
  void forgetsEverythingOnReset() {
    ObstructionGate gate = gate();
    believes(gate, 0, 8);
    rejects(gate, 1, 2);
    gate.reset();

    assertNull(gate.tick(at(100)));
    believes(gate, 2, 2);
  }

  @Test
  void keepsAWorseQuality() {
    ObstructionGate gate = gate();
    Quality under = Quality.uncertain(Cause.LOOP_UNDER_RANGE);
    Reading reading = new Reading(8, under, at(0));

    assertEquals(reading, gate.apply(reading));
  }

  /** Whatever comes, at uneven times: no run of rejections is longer than the stated time. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void neverRejectsForLongerThanTheStatedTime(long seed) {
    Random random = new Random(seed);
    ObstructionGate gate = gate();
    double time = 0;
    double rejectedSince = -1;
    for (int i = 0; i < 2000; i++) {
      time += random.nextInt(10) == 0 ? 0 : random.nextDouble() * (random.nextBoolean() ? 1 : 40);
      boolean rejected = feed(gate, time, 30 * random.nextDouble()) == null;
      if (rejected && rejectedSince < 0) {
        rejectedSince = time;
      }
      rejectedSince = rejected ? rejectedSince : -1;
      boolean short20 = rejectedSince < 0 || time - rejectedSince < 20 + 1e-6;
      assertTrue(short20, "seed " + seed + " sample " + i);
    }
  }

  /** Uneven times too: a lasting change is believed at the latest after the stated time. */
  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13, 14})
  void alwaysBelievesALastingJumpInTime(long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 200; round++) {
      ObstructionGate gate = gate();
      feed(gate, 0, 8);
      double to = random.nextBoolean() ? 1 + random.nextDouble() : 20 + random.nextDouble();
      double time = 1;
      while (feed(gate, time, to) == null && gate.tick(at(time)) == null) {
        assertTrue(time <= 21 + 1e-6, "seed " + seed + " round " + round);
        time += 15 * random.nextDouble();
        if (time > 21 && gate.tick(at(21)) != null) {
          break;
        }
      }
    }
  }
}
