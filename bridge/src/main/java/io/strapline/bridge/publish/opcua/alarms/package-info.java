/**
 * Alarm conditions after OPC 10000-9 without any OPC UA library: what a condition is, how it
 * follows the alarms of a point, and what an operator may do to it. The measuring library owns
 * whether an alarm stands and is acknowledged; a condition only shows it. Entry type: {@link
 * io.strapline.bridge.publish.opcua.alarms.Conditions}.
 */
@NullMarked
package io.strapline.bridge.publish.opcua.alarms;

import org.jspecify.annotations.NullMarked;
