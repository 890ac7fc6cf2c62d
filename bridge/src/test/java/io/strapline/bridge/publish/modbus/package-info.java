/** Tests of the Modbus TCP server and its register map. */
@NullMarked
package io.strapline.bridge.publish.modbus;

import org.jspecify.annotations.NullMarked;
