/**
 * How sure a level, a volume and a mass are: an uncertainty budget by the law of propagation of the
 * GUM. Entry types: {@link io.strapline.level.uncertainty.ContentUncertainty} for a vessel, {@link
 * io.strapline.level.uncertainty.UncertaintyBudget} for any quantity with known sensitivities. May
 * import {@code vessel}, {@code table}, {@code reading}, {@code units} and {@code internal}.
 *
 * <p>GUM stands for JCGM 100:2008, "Evaluation of measurement data: guide to the expression of
 * uncertainty in measurement"; its equations and clauses are named where they are used.
 */
@NullMarked
package io.strapline.level.uncertainty;

import org.jspecify.annotations.NullMarked;
