/** Helpers shared by the bridge's tests. */
@NullMarked
package io.strapline.bridge.testing;

import org.jspecify.annotations.NullMarked;
