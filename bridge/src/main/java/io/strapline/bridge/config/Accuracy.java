package io.strapline.bridge.config;

import io.strapline.level.uncertainty.UncertaintySource;
import java.util.List;

/**
 * What is known of the errors of one point. Immutable.
 *
 * @param sources each name once, at least one; in the units of the library
 * @param coverageFactor k by which uncertainties are expanded, in [1, 10]
 */
public record Accuracy(List<UncertaintySource> sources, double coverageFactor) {

  /** Copies the list. */
  public Accuracy {
    sources = List.copyOf(sources);
  }
}
