/**
 * Argument checks shared by all packages; not exported. Entry type: {@link
 * io.strapline.level.internal.Check}. Imports nothing of the library.
 */
@NullMarked
package io.strapline.level.internal;

import org.jspecify.annotations.NullMarked;
