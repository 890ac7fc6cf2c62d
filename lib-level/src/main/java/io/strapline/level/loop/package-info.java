/**
 * The 4-20 mA loop: range, NE 43 bands with confirmation and recovery, raw counts of an input card,
 * loop budget. Entry types: {@link io.strapline.level.loop.LoopRange}, {@link
 * io.strapline.level.loop.LoopMonitor}. May import {@code reading}, {@code units} and {@code
 * internal}.
 */
@NullMarked
package io.strapline.level.loop;

import org.jspecify.annotations.NullMarked;
