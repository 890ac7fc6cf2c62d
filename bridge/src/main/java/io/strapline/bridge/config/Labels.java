package io.strapline.bridge.config;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** How the constants of an enum are written in a configuration file. Stateless. */
final class Labels {

  private Labels() {}

  /**
   * Returns the word for a constant: {@code fault-current-low}, or {@code ABCD} for byte orders.
   */
  static String of(Enum<?> constant) {
    return constant instanceof ModbusSettings.WordOrder
        ? constant.name()
        : constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Returns the words for these constants, in their order. */
  static List<String> of(List<? extends Enum<?>> constants) {
    return constants.stream().map(Labels::of).toList();
  }

  /** Returns the constant that a word stands for. */
  static <E extends Enum<E>> Optional<E> find(String word, List<E> among) {
    return among.stream().filter(constant -> of(constant).equals(word)).findFirst();
  }

  /** Returns all constants of an enum. */
  static <E extends Enum<E>> List<E> all(Class<E> type) {
    return Arrays.asList(type.getEnumConstants());
  }
}
