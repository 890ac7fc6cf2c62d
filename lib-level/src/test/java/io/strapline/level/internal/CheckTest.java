package io.strapline.level.internal;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import io.strapline.level.testing.Refusal;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.NullSource;
import org.junit.jupiter.params.provider.ValueSource;

class CheckTest {

  private static final double[] NOT_FINITE = {
    Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY
  };

  @Test
  void namesFieldValueUnitRuleAndFix() {
    assertEquals(
        "Silo.height = -2.5 m: must be greater than zero; enter the height of the shell",
        Refusal.of(
            () -> Check.positive("Silo.height", -2.5, "m", "enter the height of the shell")));
  }

  @Test
  void leavesNoGapWhereThereIsNoUnit() {
    assertEquals(
        "Alarm.priority = 9: must lie between 1 and 4; enter 1 to 4",
        Refusal.of(() -> Check.between("Alarm.priority", 9, "", 1, 4, "enter 1 to 4")));
  }

  /** A decimal comma in a message would not be the number that the user must search for. */
  @Test
  void writesNumbersTheSameWayInEveryCountry() {
    Locale before = Locale.getDefault();
    try {
      Locale.setDefault(Locale.GERMANY);
      assertEquals(
          "A.b = -1234567.25 m: must be zero or greater; fix",
          Refusal.of(() -> Check.notNegative("A.b", -1234567.25, "m", "fix")));
    } finally {
      Locale.setDefault(before);
    }
  }

  @Test
  void refusesWhatIsNotFiniteEverywhere() {
    for (double value : NOT_FINITE) {
      assertRefused("A.b", () -> Check.finite("A.b", value, "", "fix"));
      assertRefused("A.b", () -> Check.positive("A.b", value, "", "fix"));
      assertRefused("A.b", () -> Check.notNegative("A.b", value, "", "fix"));
      assertRefused("A.b", () -> Check.between("A.b", value, "", 0, 80, "fix"));
    }
  }

  @Test
  void keepsToBothSidesOfZero() {
    assertEquals(Double.MIN_VALUE, Check.positive("A.b", Double.MIN_VALUE, "", "fix"));
    assertRefused("A.b", () -> Check.positive("A.b", 0, "", "fix"));
    assertRefused("A.b", () -> Check.positive("A.b", -0.0, "", "fix"));
    assertEquals(0, Check.notNegative("A.b", 0, "", "fix"));
    assertRefused("A.b", () -> Check.notNegative("A.b", -Double.MIN_VALUE, "", "fix"));
  }

  @Test
  void takesBothEndsOfARange() {
    assertEquals(0, Check.between("A.b", 0.0, "", 0, 80, "fix"));
    assertEquals(80, Check.between("A.b", 80.0, "", 0, 80, "fix"));
    assertRefused("A.b", () -> Check.between("A.b", Math.nextUp(80.0), "", 0, 80, "fix"));
    assertRefused("A.b", () -> Check.between("A.b", -Double.MIN_VALUE, "", 0, 80, "fix"));
    assertEquals(1, Check.between("A.b", 1, "", 1, 4, "fix"));
    assertEquals(4, Check.between("A.b", 4, "", 1, 4, "fix"));
    assertRefused("A.b", () -> Check.between("A.b", 0, "", 1, 4, "fix"));
    assertRefused("A.b", () -> Check.between("A.b", 5, "", 1, 4, "fix"));
  }

  /** The two zeros differ in the equality of records. */
  @Test
  void turnsTheNegativeZeroIntoTheOther() {
    double positive = 0.0;

    assertEquals(positive, Check.finite("A.b", -0.0, "", "fix"));
    assertEquals(positive, Check.notNegative("A.b", -0.0, "", "fix"));
    assertEquals(positive, Check.between("A.b", -0.0, "", 0, 1, "fix"));
  }

  @Test
  void namesWhatIsMissing() {
    Object there = new Object();

    assertSame(there, Check.present("A.b", there, "give it"));
    assertEquals(
        "A.b is missing: give it", Refusal.of(() -> Check.present("A.b", null, "give it")));
  }

  @ParameterizedTest
  @NullSource
  @ValueSource(strings = {"", " ", "\t\n", "\u2003"})
  void refusesATextThatHoldsNothing(@Nullable String text) {
    assertEquals("A.b is empty: give it", Refusal.of(() -> Check.text("A.b", text, "give it")));
  }
}
