/** The Modbus TCP server and its register map. May import {@code model} and {@code config}. */
@NullMarked
package io.strapline.bridge.publish.modbus;

import org.jspecify.annotations.NullMarked;
