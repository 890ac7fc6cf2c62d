/**
 * Capacity (strapping) tables. Entry type: {@code CapacityTable}. May import {@code vessel}, {@code
 * units} and {@code internal}.
 */
@NullMarked
package io.strapline.level.table;

import org.jspecify.annotations.NullMarked;
