/**
 * Conditioning of a distance: gates, no-return policy, obstruction gate, median, rate limits,
 * average, lag, and the chain that runs them. Entry type: {@link
 * io.strapline.level.signal.SignalChain}. May import {@code reading}, {@code units} and {@code
 * internal}.
 */
@NullMarked
package io.strapline.level.signal;

import org.jspecify.annotations.NullMarked;
