/**
 * The surface of solids: heap and draw-down funnel with the volume under them, which of the two
 * applies, several beams on one vessel, and where a beam lands. Entry types: {@link
 * io.strapline.level.surface.SurfaceModel} for one beam, {@link
 * io.strapline.level.surface.BeamGroup} for several, {@link io.strapline.level.surface.BeamView}
 * for the aim of a beam. May import {@code vessel}, {@code reading}, {@code units} and {@code
 * internal}.
 *
 * <p>Plan coordinates have their origin on the vessel's upright axis; azimuth 0 is the x axis, and
 * azimuths count anticlockwise seen from above. Heights are metres above the vessel's datum.
 */
@NullMarked
package io.strapline.level.surface;

import org.jspecify.annotations.NullMarked;
