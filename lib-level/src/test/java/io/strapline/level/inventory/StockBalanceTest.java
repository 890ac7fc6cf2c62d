package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.inventory.StockBalance.Verdict;
import io.strapline.level.units.VolumeUnit;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class StockBalanceTest {

  private static final double GALLON = VolumeUnit.US_GALLON.toSi(1);

  // WAC 173-360A-0620: 1 % of the monthly flow-through plus 130 gallons; 10 000 gallons give 230.
  @Test
  void theMonthlyRuleAllows230GallonsOn10000() {
    BalanceRule rule = BalanceRule.undergroundTankMonth();
    assertEquals(230 * GALLON, rule.threshold(10_000 * GALLON), 1e-12);
    assertEquals(130 * GALLON, rule.threshold(0), 1e-12);
    assertEquals(230, new BalanceRule(0.01, 130).threshold(10_000), 1e-12);
  }

  // The instructions of a state's monthly fuel report (Maine DEP, form UST-08): with a leak check
  // of
  // 5 gallons, -6 and +6 are reportable, -4 and +4 are not; "greater than" in its wording.
  @ParameterizedTest
  @CsvSource({
    "6, OVER",
    "-6, SHORT",
    "4, IN_BALANCE",
    "-4, IN_BALANCE",
    "5, IN_BALANCE",
    "-5, IN_BALANCE"
  })
  void judgesAsTheFormsOwnExample(double difference, Verdict verdict) {
    StockBalance balance =
        StockBalance.of(
            1000, List.of(new StockDay(0, 500, 500 + difference)), new BalanceRule(0.01, 0));
    assertEquals(5, balance.threshold());
    assertEquals(difference, balance.difference());
    assertEquals(verdict, balance.verdict());
  }

  // Thirty days that cancel day by day and lose 7 gallons each on balance: 210 of 230 allowed,
  // then 240.
  @Test
  void sumsAMonthAndJudgesTheWhole() {
    assertEquals(Verdict.IN_BALANCE, month(7).verdict());
    StockBalance loss = month(8);
    assertEquals(Verdict.SHORT, loss.verdict());
    assertEquals(-240, loss.difference(), 1e-9);
    assertEquals(230, loss.threshold(), 1e-9);
    assertEquals(4000, loss.book(), 1e-9);
    assertEquals(3760, loss.measured(), 1e-9);
  }

  private static StockBalance month(double lossPerDay) {
    List<StockDay> days = new ArrayList<>();
    double stock = 5000;
    for (int day = 1; day <= 30; day++) {
      double received = day % 10 == 0 ? 3000 : 0;
      stock += received - 10_000.0 / 30 - lossPerDay;
      days.add(new StockDay(received, 10_000.0 / 30, stock + (day == 30 ? 0 : day % 2 * 50)));
    }
    return StockBalance.of(5000, days, new BalanceRule(0.01, 130));
  }

  @Test
  void comparesAMeterWithTheLevel() {
    BalanceRule rule = new BalanceRule(0.005, 0.2);
    StockBalance good = StockBalance.meter(100, 100.6, rule);
    assertEquals(Verdict.IN_BALANCE, good.verdict());
    assertEquals(0.7, good.threshold(), 1e-12);
    assertEquals(Verdict.OVER, StockBalance.meter(100, 100.8, rule).verdict());
    assertEquals(Verdict.SHORT, StockBalance.meter(100, 99.2, rule).verdict());
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1})
  void refusesAmounts(double wrong) {
    BalanceRule rule = new BalanceRule(0.01, 130);
    List<StockDay> days = List.of(new StockDay(1, 1, 1));
    assertRefused("StockDay.received", () -> new StockDay(wrong, 1, 1));
    assertRefused("StockDay.issued", () -> new StockDay(1, wrong, 1));
    assertRefused("StockDay.measured", () -> new StockDay(1, 1, wrong));
    assertRefused("StockBalance.opening", () -> StockBalance.of(wrong, days, rule));
    assertRefused("StockBalance.metered", () -> StockBalance.meter(wrong, 1, rule));
    assertRefused("StockBalance.byLevel", () -> StockBalance.meter(1, wrong, rule));
    assertRefused("BalanceRule.constant", () -> new BalanceRule(0.01, wrong));
    assertRefused("BalanceRule.throughput", () -> rule.threshold(wrong));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, -0.01, 1.01, 100})
  void refusesShares(double wrong) {
    assertRefused("BalanceRule.share", () -> new BalanceRule(wrong, 0));
  }

  @Test
  void refusesAPeriodWithoutADay() {
    assertRefused(
        "StockBalance.days", () -> StockBalance.of(1, List.of(), new BalanceRule(0.01, 0)));
  }
}
