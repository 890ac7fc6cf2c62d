/**
 * A source that polls devices over Modbus TCP, RTU over TCP and serial lines. The only package that
 * sees j2mod. May import {@code model}, {@code config} and {@code modbus}.
 */
@NullMarked
package io.strapline.bridge.source.modbus;

import org.jspecify.annotations.NullMarked;
