/**
 * The OPC UA server. The only package that sees Milo. May import {@code model} and {@code config}.
 */
@NullMarked
package io.strapline.bridge.publish.opcua;

import org.jspecify.annotations.NullMarked;
