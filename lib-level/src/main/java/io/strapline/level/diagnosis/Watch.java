package io.strapline.level.diagnosis;

import io.strapline.level.reading.Diagnostic;
import java.util.stream.Stream;

/** Looks for one kind of trouble. Stateful, one thread at a time. */
interface Watch {

  /** Takes the next sample, in time order. */
  void accept(Facts facts);

  /** Returns what is active. */
  Stream<Diagnostic> diagnostics();
}
