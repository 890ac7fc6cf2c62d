/**
 * A source that polls a device over Modbus TCP. The only package beside {@code publish.modbus} that
 * sees j2mod. May import {@code model} and {@code config}.
 */
@NullMarked
package io.strapline.bridge.source.modbus;

import org.jspecify.annotations.NullMarked;
