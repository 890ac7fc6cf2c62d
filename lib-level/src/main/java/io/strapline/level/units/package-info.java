/**
 * Units of measure, exact factors, and the strict parser for quantities with units. Entry type:
 * {@code Quantities}. May import {@code internal}.
 */
@NullMarked
package io.strapline.level.units;

import org.jspecify.annotations.NullMarked;
