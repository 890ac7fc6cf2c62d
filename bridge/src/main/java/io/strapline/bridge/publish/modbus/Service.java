package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusAccess;

/**
 * What a listener serves. Immutable.
 *
 * @param framing how requests lie in the stream
 * @param access who may read and who may write
 * @param limits what is borne with
 */
record Service(Framing framing, ModbusAccess access, ListenerLimits limits) {}
