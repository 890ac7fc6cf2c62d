package io.strapline.level.loop;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.loop.LoopBudget.Balance;
import io.strapline.level.loop.LoopBudget.Resistance;
import io.strapline.level.loop.LoopBudget.Verdict;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoopBudgetTest {

  private static final Pattern ELEMENT = Pattern.compile("\\s*([^;]*?) ([0-9.]+)(;|$)");

  static List<CsvRow> budgets() {
    return CsvRows.read(LoopBudgetTest.class, "loop_budget.csv");
  }

  // Worked example of the course named in the file; printed to 0.01 V and 0.1 ohm.
  @ParameterizedTest
  @MethodSource("budgets")
  void agreesWithTheWorkedExamples(CsvRow row) {
    LoopBudget budget =
        new LoopBudget(
            row.number("supply_V"),
            row.number("transmitter_min_V"),
            resistances(row.text("elements_ohm")));

    Balance balance = budget.at(row.number("current_mA"));

    assertEquals(row.number("total_ohm"), budget.totalOhms(), 1e-9);
    assertEquals(row.number("drop_V"), balance.dropVolts(), 0.0051);
    assertEquals(row.number("left_for_transmitter_V"), balance.leftVolts(), 0.0051);
    assertEquals(row.number("max_total_ohm_at_this_current"), balance.greatestOhms(), 0.051);
    assertEquals(row.text("verdict").equals("ok"), balance.verdict() == Verdict.SUFFICIENT);
  }

  @Test
  void sufficesExactlyAtTheMinimum() {
    LoopBudget budget = new LoopBudget(20, 15, List.of(new Resistance("burden", 250)));

    assertEquals(Verdict.SUFFICIENT, budget.at(20).verdict());
    assertEquals(Verdict.TOO_LOW, budget.at(20.000001).verdict());
  }

  @Test
  void hasNoRoomForAnyResistanceBelowTheTransmittersMinimum() {
    Balance balance = new LoopBudget(10, 12, List.of()).at(LoopBudget.UPSCALE_FAILURE_MILLIAMPS);

    assertEquals(Verdict.TOO_LOW, balance.verdict());
    assertTrue(balance.greatestOhms() < 0);
  }

  @Test
  void keepsItsOwnCopyOfTheResistances() {
    List<Resistance> mutable = new ArrayList<>(List.of(new Resistance("burden", 250)));
    LoopBudget budget = new LoopBudget(24, 12, mutable);
    mutable.clear();

    assertEquals(250, budget.totalOhms());
  }

  @ParameterizedTest
  @ValueSource(doubles = {-1, Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void refusesNumbersThatAreNegativeOrNotFinite(double wrong) {
    LoopBudget budget = new LoopBudget(24, 12, List.of());

    assertRefused("LoopBudget.supply", () -> new LoopBudget(wrong, 12, List.of()));
    assertRefused("LoopBudget.transmitterMinimum", () -> new LoopBudget(24, wrong, List.of()));
    assertRefused("LoopBudget.resistance.cable", () -> new Resistance("cable", wrong));
    assertRefused("LoopBudget.current", () -> budget.at(wrong));
  }

  @Test
  void refusesASupplyAndACurrentOfZero() {
    LoopBudget budget = new LoopBudget(24, 0, List.of(new Resistance("none", 0)));

    assertRefused("LoopBudget.supply", () -> new LoopBudget(0, 12, List.of()));
    assertRefused("LoopBudget.current", () -> budget.at(0));
  }

  @Test
  void refusesAResistanceWithoutName() {
    assertThrows(IllegalArgumentException.class, () -> new Resistance(" ", 1));
  }

  private static List<Resistance> resistances(String elements) {
    List<Resistance> resistances = new ArrayList<>();
    Matcher matcher = ELEMENT.matcher(elements);
    while (matcher.find()) {
      resistances.add(new Resistance(matcher.group(1), Double.parseDouble(matcher.group(2))));
    }
    return resistances;
  }
}
