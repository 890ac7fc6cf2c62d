/**
 * Capacity (strapping) tables: reading and checking them, and volume against height between their
 * rows. Entry types: {@link io.strapline.level.table.CapacityTable}, {@link
 * io.strapline.level.table.CapacityTableReader}. May import {@code vessel}, {@code units} and
 * {@code internal}.
 */
@NullMarked
package io.strapline.level.table;

import org.jspecify.annotations.NullMarked;
