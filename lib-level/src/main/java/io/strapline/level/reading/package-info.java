/**
 * What a measured value carries: the value, its quality with one cause, its source time, and the NE
 * 107 status. Entry type: {@link io.strapline.level.reading.Reading}. May import {@code internal}
 * and {@code units}.
 */
@NullMarked
package io.strapline.level.reading;

import org.jspecify.annotations.NullMarked;
