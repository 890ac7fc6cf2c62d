/**
 * Alarm conditions in the address space of the OPC UA server: their nodes, methods, events and
 * refresh, all made from the state that the engine keeps. Entry type: {@link
 * io.strapline.bridge.publish.opcua.conditions.ConditionPublisher}. Sees the engine and the server
 * shell.
 */
@NullMarked
package io.strapline.bridge.publish.opcua.conditions;

import org.jspecify.annotations.NullMarked;
