/**
 * The measuring point: one call per sample runs the whole chain and returns an immutable snapshot.
 * Entry type: {@link io.strapline.level.point.MeasuringPoint}. May import every package of the
 * library but {@code plan}.
 */
@NullMarked
package io.strapline.level.point;

import org.jspecify.annotations.NullMarked;
