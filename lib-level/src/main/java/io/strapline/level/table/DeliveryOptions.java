package io.strapline.level.table;

import io.strapline.level.internal.Check;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What a delivered file does not say about itself, in the words of its own declarations. An option
 * that differs from what the file declares is a problem, never a silent choice. Immutable.
 *
 * @param values by declaration
 */
public record DeliveryOptions(Map<TableDeclaration, String> values) {

  /** Checks and copies the values. */
  public DeliveryOptions {
    values = Map.copyOf(values);
    values.forEach(DeliveryOptions::check);
  }

  private static void check(TableDeclaration declaration, String value) {
    if (!declaration.mayBeAnOption()) {
      throw Check.error(
          "DeliveryOptions." + declaration.key(),
          value,
          "",
          "belongs to one block of the file and cannot be an option",
          "write it into the file");
    }
    Check.text("DeliveryOptions." + declaration.key(), value, "give its value or leave it out");
  }

  /** Returns no options: the file says everything. */
  public static DeliveryOptions none() {
    return new DeliveryOptions(Map.of());
  }

  /**
   * Returns these options and one more.
   *
   * @param declaration such as REFERENCE_HEIGHT
   * @param value as it would stand in the file, such as {@code 12.345 m}
   */
  public DeliveryOptions with(TableDeclaration declaration, String value) {
    Map<TableDeclaration, String> more = new EnumMap<>(TableDeclaration.class);
    more.putAll(values);
    more.put(declaration, value);
    return new DeliveryOptions(more);
  }

  Optional<String> value(TableDeclaration declaration) {
    return Optional.ofNullable(values.get(declaration));
  }
}
