package io.strapline.bridge.publish.modbus;

/**
 * One discrete input of a block. Immutable.
 *
 * @param offset from the start of the block, 0 to 99
 * @param name what it says when it is on
 */
public record BitRow(int offset, String name) {}
