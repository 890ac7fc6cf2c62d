package io.strapline.level.testing;

import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Objects;
import org.junit.jupiter.api.function.Executable;

/** What a refused argument is told. */
public final class Refusal {

  private Refusal() {}

  /** Runs the call, which must be refused, and returns the text of the refusal. */
  public static String of(Executable call) {
    return Objects.requireNonNull(
        assertThrows(IllegalArgumentException.class, call).getMessage(), "no message");
  }
}
