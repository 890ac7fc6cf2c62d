package io.strapline.bridge.publish.opcua.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LikePatternTest {

  // Table of wildcard characters, OPC 10000-4, FilterOperator Like (examples from memory of it).
  @ParameterizedTest
  @CsvSource({
    "main%, main street, true",
    "main%, the main street, false",
    "%en%, entry, true",
    "%en%, strength, true",
    "%en%, level, false",
    "_ould, would, true",
    "_ould, could, true",
    "_ould, ould, false",
    "5[%], 5%, true",
    "5\\%, 5%, true",
    "5\\%, 5x, false",
    "abc[13-68], abc1, true",
    "abc[13-68], abc5, true",
    "abc[13-68], abc8, true",
    "abc[13-68], abc2, false",
    "xyz[c-f], xyze, true",
    "ABC[^13-5], ABC2, true",
    "ABC[^13-5], ABC4, false",
    "%, anything, true",
    "a%b%c, a1b2b3c, true",
    "a%b%c, a1b2b3, false",
    "'', x, false",
    "[abc, [abc, true"
  })
  void matchesTheWholeText(String pattern, String text, boolean expected) {
    assertEquals(expected, new LikePattern(pattern).matches(text));
  }

  @Test
  void endsSoonWhateverAClientSends() {
    LikePattern pattern = new LikePattern("%a".repeat(200) + "b");
    assertFalse(pattern.matches("a".repeat(2_000)));
  }
}
