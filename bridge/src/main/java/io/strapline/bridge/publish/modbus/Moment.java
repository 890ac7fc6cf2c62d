package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.BadValue;
import java.time.Instant;

/**
 * What is common to all registers of one image. Immutable.
 *
 * @param now plant time at which the image was made
 * @param generation number of the image, 0 to 65535, then 0 again
 * @param heartbeat seconds since the start of the server, 0 to 65535, then 0 again
 * @param stalled whether the bridge has stopped making images, so that nothing may be trusted
 * @param badValue what value registers hold while the value is BAD
 */
record Moment(Instant now, int generation, int heartbeat, boolean stalled, BadValue badValue) {}
