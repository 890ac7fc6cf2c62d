/**
 * Wires a plant, starts it in order and stops it in reverse. Entry type: {@code PlantRun}. May
 * import every package but {@code cli}.
 */
@NullMarked
package io.strapline.bridge.app;

import org.jspecify.annotations.NullMarked;
