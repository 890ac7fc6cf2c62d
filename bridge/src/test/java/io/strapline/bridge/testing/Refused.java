package io.strapline.bridge.testing;

import java.util.Objects;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.function.Executable;

/** The words in which something is refused. Stateless. */
public final class Refused {

  private Refused() {}

  /** Returns the message of the exception of this type that the call throws. */
  public static String message(Class<? extends Exception> type, Executable call) {
    return Objects.requireNonNull(Assertions.assertThrows(type, call).getMessage());
  }
}
