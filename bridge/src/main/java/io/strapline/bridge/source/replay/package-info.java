/** A source that replays a recorded series. May import {@code model} and {@code config}. */
@NullMarked
package io.strapline.bridge.source.replay;

import org.jspecify.annotations.NullMarked;
