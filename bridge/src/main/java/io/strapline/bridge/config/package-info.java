/**
 * The plant configuration: records, the YAML reader that collects every problem, and the capacity
 * tables it names. Entry type: {@code PlantReader}. May import lib-level only.
 */
@NullMarked
package io.strapline.bridge.config;

import org.jspecify.annotations.NullMarked;
