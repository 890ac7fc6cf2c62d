/** Tests of the server shell: what it fixes, and that the library still needs it. */
@NullMarked
package io.strapline.bridge.publish.opcua.server;

import org.jspecify.annotations.NullMarked;
