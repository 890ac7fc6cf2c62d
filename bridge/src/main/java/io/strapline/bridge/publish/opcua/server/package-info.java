/**
 * The OPC UA server shell: the library's server with its known gaps closed, one class per gap, each
 * with a test that tells when a newer library no longer needs it. Entry type: {@link
 * io.strapline.bridge.publish.opcua.server.FixedServer}. Sees no other package of the bridge.
 */
@NullMarked
package io.strapline.bridge.publish.opcua.server;

import org.jspecify.annotations.NullMarked;
