/**
 * Design time, not run time: what an engineer works out before a measuring point is switched on,
 * such as set points by volume and response time. Entry type: {@link
 * io.strapline.level.plan.SetPointPlan}. May import everything that {@code point} may, and {@code
 * point} itself.
 */
@NullMarked
package io.strapline.level.plan;

import org.jspecify.annotations.NullMarked;
