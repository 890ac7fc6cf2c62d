/** Tests of the OPC UA server. */
@NullMarked
package io.strapline.bridge.publish.opcua;

import org.jspecify.annotations.NullMarked;
