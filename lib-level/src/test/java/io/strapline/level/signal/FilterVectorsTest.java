package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.abort;

import java.util.Set;
import org.junit.jupiter.api.Test;

class FilterVectorsTest {

  private static final Set<String> CHECKED =
      Set.of("median", "moving_average", "ema_exact", "slew_limit");
  private static final Set<String> LATER = Set.of("ema_backward");

  /** Fails when the file gains a filter that no test looks at; shows the rest as skipped. */
  @Test
  void leavesOnlyTheBackwardWeightOut() {
    long all = FilterVectors.rows().size();
    long checked = count(CHECKED);
    long left = count(LATER);
    assertEquals(all, checked + left);
    abort(left + " of " + all + " vectors are of filters that the chain does not have: " + LATER);
  }

  private static long count(Set<String> filters) {
    return FilterVectors.rows().stream()
        .filter(row -> filters.contains(row.text("filter")))
        .count();
  }
}
