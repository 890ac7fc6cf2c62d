package io.strapline.level.units;

import io.strapline.level.internal.Check;
import java.util.List;
import java.util.Optional;

/**
 * What makes a unit: what it measures, how it is written, its UNECE code and its exact conversion.
 * Immutable.
 *
 * @param dimension what the unit measures
 * @param label the unit's name in words, singular
 * @param uneceCode UNECE Recommendation 20 common code; empty where there is none
 * @param conversion to the unit the library computes in
 * @param symbols how the unit may be written; the first is the proper symbol; one of them is in
 *     ASCII
 */
public record UnitDefinition(
    Dimension dimension,
    String label,
    Optional<String> uneceCode,
    Conversion conversion,
    List<String> symbols) {

  /** Stands for "no common code". */
  static final String NO_CODE = "";

  /** Checks the texts. */
  public UnitDefinition {
    Check.text("UnitDefinition.label", label, "give the unit's name");
    symbols = List.copyOf(symbols);
    if (symbols.stream().noneMatch(UnitDefinition::isAscii)) {
      throw new IllegalArgumentException(
          "UnitDefinition.symbols = " + symbols + ": one must be in ASCII; give one");
    }
  }

  static UnitDefinition of(
      Dimension dimension, String label, String code, Conversion conversion, String... symbols) {
    Optional<String> unece = Optional.of(code).filter(text -> !text.isEmpty());
    return new UnitDefinition(dimension, label, unece, conversion, List.of(symbols));
  }

  String asciiSymbol() {
    return symbols.stream().filter(UnitDefinition::isAscii).findFirst().orElseThrow();
  }

  private static boolean isAscii(String text) {
    return text.chars().allMatch(c -> c < 128);
  }
}
