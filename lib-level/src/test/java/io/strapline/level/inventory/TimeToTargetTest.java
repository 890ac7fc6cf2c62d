package io.strapline.level.inventory;

import static io.strapline.level.inventory.Series.bad;
import static io.strapline.level.inventory.Series.good;
import static io.strapline.level.inventory.Series.uncertain;
import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.Target.Side;
import io.strapline.level.inventory.TimeToTarget.Outlook;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.units.VolumeUnit;
import io.strapline.level.vessel.CapacityCurve;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TimeToTargetTest {

  private static final List<CsvRow> EXAMPLES =
      CsvRows.read(TimeToTargetTest.class, "overfill_examples.csv");
  private static final GreatestFlows BOTH = GreatestFlows.of(2, 2);
  private static final Target HIGH = new Target("high", 100, Side.FROM_BELOW);
  private static final Target LOW = new Target("low", 100, Side.FROM_ABOVE);

  private static double example(String name, String quantity) {
    return EXAMPLES.stream()
        .filter(row -> row.text("example").equals(name))
        .filter(row -> row.text("quantity").startsWith(quantity))
        .findFirst()
        .orElseThrow()
        .number("value");
  }

  // Printed to 1e-6 min and 1e-6 m.
  @Test
  void meetsTheWorkedExampleOfAnUprightTank() {
    CapacityCurve tank = Vessels.upright(example("EX1-VERTICAL", "plan area"), 12);
    Target critical =
        Target.atLevel(
            "critical high",
            example("EX1-VERTICAL", "critical high"),
            Content.volume(tank),
            Side.FROM_BELOW);
    double now = tank.volumeCubicMetres(example("EX1-VERTICAL", "high-high = CH"));
    double greatest = example("EX1-VERTICAL", "maximum fill rate") / 3600;
    TimeToTarget time =
        TimeToTarget.of(critical, good(0, now), good(0, 0), GreatestFlows.of(greatest, 1));
    assertEquals(Outlook.STANDING, time.outlook());
    assertTrue(time.secondsAtPresentFlow().isEmpty());
    assertEquals(
        60 * example("EX1-VERTICAL", "time HH to CH"),
        time.secondsAtGreatestFlow().orElseThrow(),
        2e-3);
  }

  // By volume and not by a constant rate of rise: the cross-section shrinks towards the top.
  @Test
  void meetsTheWorkedExampleOfALyingTank() {
    CapacityCurve tank =
        Vessels.lying(example("EX2-HORIZONTAL", "radius"), example("EX2-HORIZONTAL", "length"));
    Target critical =
        Target.atLevel(
            "critical high",
            example("EX2-HORIZONTAL", "critical high"),
            Content.volume(tank),
            Side.FROM_BELOW);
    assertEquals(example("EX2-HORIZONTAL", "volume at critical high"), critical.amount(), 1e-8);
    double rate = example("EX2-HORIZONTAL", "maximum fill rate") / 3600;
    double now = tank.volumeCubicMetres(example("EX2-HORIZONTAL", "high-high"));
    TimeToTarget time =
        TimeToTarget.of(critical, good(0, now), good(0, rate), GreatestFlows.of(rate, 1));
    assertEquals(Outlook.APPROACHING, time.outlook());
    double expected = 60 * example("EX2-HORIZONTAL", "response time");
    assertEquals(expected, time.secondsAtPresentFlow().orElseThrow(), 1e-3);
  }

  // New Hampshire Env-Or 302.04: rated capacity less the greatest fill rate over 2 minutes.
  @Test
  void aTankAtTheSafeFillOfAStateRuleIsFullAfterTheRulesTime() {
    double gallon = VolumeUnit.US_GALLON.toSi(1);
    CapacityCurve tank = Vessels.upright(1, gallon * example("RULE-2MIN", "rated capacity"));
    double now = gallon * example("RULE-2MIN", "maximum safe fill volume");
    double rate = gallon * example("RULE-2MIN", "fill rate") / 60;
    TimeToTarget time =
        TimeToTarget.of(Target.full(tank), good(0, now), good(0, rate), GreatestFlows.of(rate, 1));
    assertEquals(
        60 * example("RULE-2MIN", "time used"), time.secondsAtPresentFlow().orElseThrow(), 1e-9);
  }

  @Test
  void toEmptyCountsTheDraw() {
    TimeToTarget time =
        TimeToTarget.of(Target.empty(), good(0, 36), good(0, -0.01), GreatestFlows.of(1, 0.02));
    assertEquals(Outlook.APPROACHING, time.outlook());
    assertEquals(3600, time.secondsAtPresentFlow().orElseThrow(), 1e-9);
    assertEquals(1800, time.secondsAtGreatestFlow().orElseThrow(), 1e-9);
  }

  @Test
  void aFlowAwayHasNoTimeButTheGreatestFlowHas() {
    TimeToTarget time = TimeToTarget.of(HIGH, good(0, 40), good(0, -1), BOTH);
    assertEquals(Outlook.GOING_AWAY, time.outlook());
    assertEquals(OptionalDouble.empty(), time.secondsAtPresentFlow());
    assertEquals(OptionalDouble.of(30), time.secondsAtGreatestFlow());
    assertEquals(
        Outlook.GOING_AWAY, TimeToTarget.of(LOW, good(0, 140), good(0, 1), BOTH).outlook());
  }

  @Test
  void atOrBeyondTheTargetTheTimeIsZeroWhateverTheFlow() {
    for (double flow : new double[] {-1, 0, 1}) {
      for (double content : new double[] {100, 130}) {
        TimeToTarget time = TimeToTarget.of(HIGH, good(0, content), good(0, flow), BOTH);
        assertEquals(Outlook.REACHED, time.outlook());
        assertEquals(OptionalDouble.of(0), time.secondsAtPresentFlow());
        assertEquals(OptionalDouble.of(0), time.secondsAtGreatestFlow());
      }
    }
    assertEquals(Outlook.REACHED, TimeToTarget.of(LOW, good(0, 80), good(0, 1), BOTH).outlook());
  }

  @Test
  void badContentTellsNothingAndBadFlowOnlyTheGreatest() {
    TimeToTarget none = TimeToTarget.of(HIGH, bad(0), good(0, 1), BOTH);
    assertEquals(Outlook.UNKNOWN, none.outlook());
    assertTrue(none.secondsAtGreatestFlow().isEmpty());
    TimeToTarget greatest = TimeToTarget.of(HIGH, good(0, 40), bad(0), BOTH);
    assertEquals(Outlook.UNKNOWN, greatest.outlook());
    assertTrue(greatest.secondsAtPresentFlow().isEmpty());
    assertEquals(OptionalDouble.of(30), greatest.secondsAtGreatestFlow());
  }

  @Test
  void carriesTheWorstQualityOfContentAndFlow() {
    Reading doubtful = uncertain(0, 40);
    assertEquals(Quality.GOOD, TimeToTarget.of(HIGH, good(0, 40), good(0, 1), BOTH).quality());
    assertEquals(doubtful.quality(), TimeToTarget.of(HIGH, doubtful, good(0, 1), BOTH).quality());
    assertEquals(
        doubtful.quality(), TimeToTarget.of(HIGH, good(0, 40), uncertain(0, 1), BOTH).quality());
    assertEquals(bad(0).quality(), TimeToTarget.of(HIGH, doubtful, bad(0), BOTH).quality());
  }

  @Test
  void aTimeBeyondTheHorizonIsNotTold() {
    TimeToTarget time =
        TimeToTarget.of(HIGH, good(0, 40), good(0, Double.MIN_VALUE), GreatestFlows.of(1e-9, 1e-9));
    assertEquals(Outlook.APPROACHING, time.outlook());
    assertTrue(time.secondsAtPresentFlow().isEmpty());
    assertTrue(time.secondsAtGreatestFlow().isEmpty());
  }

  @Test
  void withoutAGreatestFlowOnlyThePresentOneIsTold() {
    TimeToTarget time = TimeToTarget.of(HIGH, good(0, 40), good(0, 1), GreatestFlows.UNKNOWN);
    assertEquals(OptionalDouble.of(60), time.secondsAtPresentFlow());
    assertTrue(time.secondsAtGreatestFlow().isEmpty());
  }

  @Test
  void takesTheGreatestFlowThatLeadsToTheTarget() {
    GreatestFlows flows = GreatestFlows.of(2, 5);
    assertEquals(
        OptionalDouble.of(30),
        TimeToTarget.of(HIGH, good(0, 40), good(0, 0), flows).secondsAtGreatestFlow());
    assertEquals(
        OptionalDouble.of(12),
        TimeToTarget.of(LOW, good(0, 160), good(0, 0), flows).secondsAtGreatestFlow());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0})
  void refusesGreatestFlows(double wrong) {
    assertRefused("GreatestFlows.filling", () -> GreatestFlows.of(wrong, 1));
    assertRefused("GreatestFlows.drawing", () -> GreatestFlows.of(1, wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1})
  void refusesTargets(double wrong) {
    assertRefused("Target.amount", () -> new Target("x", wrong, Side.FROM_BELOW));
  }
}
