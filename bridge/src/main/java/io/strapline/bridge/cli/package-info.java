/** The command line. Entry type: {@code Main}. May import {@code app} and everything below it. */
@NullMarked
package io.strapline.bridge.cli;

import org.jspecify.annotations.NullMarked;
