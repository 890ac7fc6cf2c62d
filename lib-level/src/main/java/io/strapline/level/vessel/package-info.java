/**
 * Vessel geometry: height to volume and back. Entry types: {@link
 * io.strapline.level.vessel.CapacityCurve} for who needs a volume, {@link
 * io.strapline.level.vessel.StackedVessel}, {@link io.strapline.level.vessel.LyingCylinder} and
 * {@link io.strapline.level.vessel.Sphere} for who has a vessel. May import {@code internal} and
 * {@code units}.
 */
@NullMarked
package io.strapline.level.vessel;

import org.jspecify.annotations.NullMarked;
