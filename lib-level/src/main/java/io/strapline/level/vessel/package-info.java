/**
 * Vessel geometry: height to volume and back. Entry type: {@link
 * io.strapline.level.vessel.CapacityCurve}. May import {@code internal} and {@code units}.
 */
@NullMarked
package io.strapline.level.vessel;

import org.jspecify.annotations.NullMarked;
