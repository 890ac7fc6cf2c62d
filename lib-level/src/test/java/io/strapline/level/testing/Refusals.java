package io.strapline.level.testing;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.function.Executable;

/** Asserts that wrong arguments are refused with a message that names the field. */
public final class Refusals {

  private Refusals() {}

  /** Asserts that an argument is refused with {@code field = value: rule; fix}. */
  public static void assertRefused(String field, Executable wrong) {
    String message = Refusal.of(wrong);
    assertTrue(message.startsWith(field + " = "), message);
    assertTrue(message.indexOf("; ") > message.indexOf(": "), message);
  }
}
