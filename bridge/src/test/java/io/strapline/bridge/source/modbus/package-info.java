/** Tests of the Modbus source. */
@NullMarked
package io.strapline.bridge.source.modbus;

import org.jspecify.annotations.NullMarked;
