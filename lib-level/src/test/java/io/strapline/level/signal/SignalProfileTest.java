package io.strapline.level.signal;

import static io.strapline.level.signal.SignalFilterContract.at;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class SignalProfileTest {

  private static final double[] INTERVALS = {1.0 / 3, 0.5, 1, 2, 5, 10, 60, 600};

  private static final GateSettings GATES =
      new GateSettings(0.5, 30, OptionalDouble.empty(), List.of());

  private static Reading feed(SignalChain chain, double seconds, double metres) {
    return chain.accept(Reading.good(metres, at(seconds)), OptionalDouble.empty()).smooth();
  }

  @ParameterizedTest
  @EnumSource(SignalProfile.class)
  void saysOfEachValueWhatItIsAndWhy(SignalProfile profile) {
    List<ProfileSheet.Row> rows = profile.sheet().rows();
    assertEquals(ProfileKey.values().length, rows.size());
    for (ProfileSheet.Row row : rows) {
      assertFalse(row.why().isBlank(), row.toString());
      assertTrue(row.value() >= 0, row.toString());
      assertTrue(List.of("s", "m", "m/s").contains(row.unit()), row.toString());
    }
  }

  /** Whatever the sample interval: the stated spans are kept, so nothing comes later than this. */
  @ParameterizedTest
  @EnumSource(SignalProfile.class)
  void delaysNeverByMoreThanHalfItsSpansAndItsLag(SignalProfile profile) {
    ProfileSheet sheet = profile.sheet();
    double median = sheet.value(ProfileKey.MEDIAN_SPAN) / 2;
    double average = sheet.value(ProfileKey.AVERAGE_SPAN) / 2;
    for (double interval : INTERVALS) {
      SignalChain chain = SignalChain.of(sheet.settings(GATES, interval));
      assertTrue(chain.earlyDelaySeconds(interval) <= median + 1e-6, interval + " s");
      double most = median + average + sheet.value(ProfileKey.LAG);
      assertTrue(chain.delaySeconds(interval) <= most + 1e-6, interval + " s");
    }
  }

  /** A surface that moves within the limits is GOOD all the time, at every sample interval. */
  @ParameterizedTest
  @EnumSource(SignalProfile.class)
  void passesASurfaceThatMovesAtHalfTheLimits(SignalProfile profile) {
    double limit = profile.sheet().value(ProfileKey.RISE);
    double doubted = profile.sheet().value(ProfileKey.NEAR_BEYOND);
    for (double interval : INTERVALS) {
      // A chute sets no limit: there half the doubted distance at each sample.
      double speed = limit > 0 ? limit / 2 : doubted / 2 / interval;
      if (speed * interval < 10) {
        SignalChain chain = SignalChain.of(profile.sheet().settings(GATES, interval));
        for (int i = 0; 25 - speed * interval * i > 1; i++) {
          Reading output = feed(chain, interval * i, 25 - speed * interval * i);
          assertEquals(Quality.GOOD, output.quality(), interval + " s, sample " + i);
        }
      }
    }
  }

  /** Nor is a real jump thrown away: it is believed after the stated time, at every interval. */
  @ParameterizedTest
  @EnumSource(SignalProfile.class)
  void believesALastingJumpAfterTheStatedTime(SignalProfile profile) {
    for (double interval : INTERVALS) {
      SignalChain chain = SignalChain.of(profile.sheet().settings(GATES, interval));
      feed(chain, 0, 20);
      double time = interval;
      double early;
      do {
        early = chain.accept(Reading.good(12, at(time)), OptionalDouble.empty()).early().value();
        time += interval;
      } while (early != 12 && time < 1e5);
      double stated = Math.max(profile.sheet().value(ProfileKey.ACCEPT_AFTER), 3 * interval);
      double median = profile.sheet().value(ProfileKey.MEDIAN_SPAN) / 2;
      assertTrue(time - 2 * interval <= stated + median + 1e-6, interval + " s: " + time);
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void showsASiloUnderDustWithoutASingleNearReading(long seed) {
    Random random = new Random(seed);
    SignalChain chain = SignalChain.of(SignalProfile.DUSTY_FILL.sheet().settings(GATES, 1));
    feed(chain, 0, 15);
    for (int i = 1; i < 2000; i++) {
      // One in three is dust somewhere above the surface, which rises by 1 mm a second.
      double surface = 15 - 0.001 * i + 0.03 * random.nextGaussian();
      double metres = random.nextInt(3) == 0 ? 1 + random.nextDouble() * (surface - 2) : surface;
      Reading output = feed(chain, i, metres);
      assertEquals(15 - 0.001 * i, output.value(), 0.3, "seed " + seed + " sample " + i);
    }
  }

  @Test
  void replacesOneValueAndLeavesTheOthers() {
    ProfileSheet sheet = SignalProfile.STILL.sheet();
    ProfileSheet other = sheet.with(ProfileKey.LAG, 7).with(ProfileKey.HOLD, 3, "short hold");
    List<String> changed = new ArrayList<>();
    for (int i = 0; i < sheet.rows().size(); i++) {
      if (!sheet.rows().get(i).equals(other.rows().get(i))) {
        changed.add(other.rows().get(i).name() + ": " + other.rows().get(i).why());
      }
    }
    assertEquals(List.of("hold: short hold", "lag: set for this point"), changed);
    assertEquals(7, other.settings(GATES, 1).lagSeconds());
    assertEquals(5, sheet.settings(GATES, 1).lagSeconds());
  }

  @Test
  void leavesAStageOutWhereItsValueIsZero() {
    ProfileSheet bare =
        SignalProfile.STILL
            .sheet()
            .with(ProfileKey.NEAR_SPAN, 0)
            .with(ProfileKey.FAR_SPAN, 0)
            .with(ProfileKey.RISE, 0)
            .with(ProfileKey.FALL, 0)
            .with(ProfileKey.LOST_HORIZON, 0);
    assertEquals(SurfaceChecks.NONE, bare.settings(GATES, 1).surface());
    SurfaceChecks farOnly =
        SignalProfile.STILL.sheet().with(ProfileKey.NEAR_SPAN, 0).settings(GATES, 1).surface();
    assertEquals(1, farOnly.obstruction().orElseThrow().near().of());
    assertEquals(4, farOnly.obstruction().orElseThrow().far().of());
  }

  /** By hand: 3 s at three samples a second are ten samples, six of which must agree. */
  @Test
  void countsInSamplesWhatTheProfileStatesInSeconds() {
    SignalSettings quick = SignalProfile.STILL.sheet().settings(GATES, 1.0 / 3);
    assertEquals(7, quick.medianSamples());
    assertEquals(31, quick.averageSamples());
    assertEquals(10, quick.surface().obstruction().orElseThrow().near().of());
    assertEquals(6, quick.surface().obstruction().orElseThrow().near().agreeing());
    SignalSettings slow = SignalProfile.STILL.sheet().settings(GATES, 60);
    assertEquals(1, slow.medianSamples());
    assertEquals(1, slow.averageSamples());
    assertEquals(0.6, slow.surface().obstruction().orElseThrow().near().beyondMetres(), 1e-12);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, -1})
  void refusesAValueThatIsNoTimeOrLength(double wrong) {
    for (ProfileKey key : ProfileKey.values()) {
      assertRefused(
          "ProfileSheet." + key.label(), () -> SignalProfile.CHUTE.sheet().with(key, wrong));
    }
    assertRefused(
        "SignalFilter.sampleInterval", () -> SignalProfile.CHUTE.sheet().settings(GATES, wrong));
  }

  @Test
  void suspectsOverfullUnderEveryProfile() {
    for (SignalProfile profile : SignalProfile.values()) {
      SignalChain chain = SignalChain.of(profile.sheet().settings(GATES, 1));
      feed(chain, 0, 0.55);
      Reading lost = new Reading(0, Quality.bad(Cause.NO_RETURN), at(1));
      assertEquals(
          Quality.bad(Cause.OVERFULL_SUSPECTED),
          chain.accept(lost, OptionalDouble.empty()).early().quality());
    }
  }
}
