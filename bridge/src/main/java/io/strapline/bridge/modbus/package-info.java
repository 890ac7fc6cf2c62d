/**
 * What the Modbus server and the Modbus source share of serial lines: checksum, timing, the port
 * itself. May import {@code config}. The only package that sees jSerialComm.
 */
@NullMarked
package io.strapline.bridge.modbus;

import org.jspecify.annotations.NullMarked;
