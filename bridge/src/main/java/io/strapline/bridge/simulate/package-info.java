/** Simulated transmitters. May import {@code model} and {@code config}. */
@NullMarked
package io.strapline.bridge.simulate;

import org.jspecify.annotations.NullMarked;
