/**
 * Vessel geometry: height to volume and back. Entry types: {@link
 * io.strapline.level.vessel.CapacityCurve} for who needs a volume; {@link
 * io.strapline.level.vessel.StackedVessel}, {@link io.strapline.level.vessel.LyingCylinder}, {@link
 * io.strapline.level.vessel.LyingTank}, {@link io.strapline.level.vessel.TiltedTank} and {@link
 * io.strapline.level.vessel.Sphere} for who has a vessel, with {@link
 * io.strapline.level.vessel.Head} for its ends; {@link io.strapline.level.vessel.CompiledCurve} for
 * who needs many volumes fast. May import {@code internal} and {@code units}.
 */
@NullMarked
package io.strapline.level.vessel;

import org.jspecify.annotations.NullMarked;
