package io.strapline.level.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class CauseTest {

  @ParameterizedTest
  @EnumSource(Cause.class)
  void tellsPeopleWhatIsWrongInOneShortSentenceWithoutAFullStop(Cause cause) {
    String text = cause.text();

    assertFalse(text.isBlank());
    assertEquals(text.strip(), text);
    assertFalse(text.endsWith("."), text);
    assertTrue(text.length() <= 80, text);
  }

  @ParameterizedTest
  @EnumSource(Cause.class)
  void tellsPeopleWhatToDoInOneSentenceWithoutAFullStop(Cause cause) {
    String advice = cause.advice();

    assertFalse(advice.isBlank());
    assertEquals(advice.strip(), advice);
    assertFalse(advice.contains(". ") || advice.endsWith("."), advice);
    assertTrue(advice.length() <= 120, advice);
    assertTrue(Character.isLowerCase(advice.charAt(0)), advice);
  }

  @Test
  void saysSomethingElseForEachCause() {
    Set<String> texts = new HashSet<>();
    for (Cause cause : Cause.values()) {
      assertTrue(texts.add(cause.text()), "said twice: " + cause.text());
    }
  }

  /** Otherwise a point could be uncertain while its NE 107 status says that all is well. */
  @ParameterizedTest
  @EnumSource(Cause.class)
  void standsForADiagnosticUnlessNothingIsWrong(Cause cause) {
    assertEquals(cause == Cause.NONE, cause.status() == DiagnosticStatus.NORMAL);
  }

  /** The text says "held" exactly where the value is a measurement no more. */
  @Test
  void isHeldWhereTheLastValueStandsIn() {
    Set<Cause> held = new HashSet<>();
    Arrays.stream(Cause.values()).filter(Cause::isHeld).forEach(held::add);
    Set<Cause> said = new HashSet<>();
    Arrays.stream(Cause.values())
        .filter(cause -> cause.text().contains("last value held"))
        .forEach(said::add);

    assertEquals(said, held);
    assertEquals(3, held.size());
  }
}
