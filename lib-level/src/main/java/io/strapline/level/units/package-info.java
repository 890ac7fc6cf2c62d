/**
 * Units of measure, exact factors, and the strict parser for quantities with units. Entry type:
 * {@link io.strapline.level.units.Quantities}. May import {@code internal}.
 *
 * <p>Factors are exact by definition: the inch is 0.0254 m, the pound 0.453 592 37 kg, the US
 * gallon 231 cubic inches, the imperial gallon 4.546 09 L (NIST Special Publication 811, appendix
 * B). Common codes are those of UNECE Recommendation 20 as the OPC Foundation lists them.
 */
@NullMarked
package io.strapline.level.units;

import org.jspecify.annotations.NullMarked;
