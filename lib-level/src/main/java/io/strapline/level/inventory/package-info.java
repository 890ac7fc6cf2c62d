/**
 * What is in the vessel and what goes in and out: bulk density and mass, moisture, flow over a
 * window of time, time to full and to empty, totals, batches, stock balance, temperature and
 * pressure corrections of liquids, and typical bulk materials. Entry types: {@link
 * io.strapline.level.inventory.MassCurve} for mass, {@link
 * io.strapline.level.inventory.FlowEstimator} for flow, {@link io.strapline.level.inventory.Totals}
 * for totals, {@link io.strapline.level.inventory.LiquidStock} for liquids at standard conditions.
 * May import {@code vessel}, {@code reading}, {@code units} and {@code internal}.
 */
@NullMarked
package io.strapline.level.inventory;

import org.jspecify.annotations.NullMarked;
