/** Tests of the condition engine. */
@NullMarked
package io.strapline.bridge.publish.opcua.alarms;

import org.jspecify.annotations.NullMarked;
