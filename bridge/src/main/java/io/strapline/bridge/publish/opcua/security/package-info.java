/**
 * Who may read over OPC UA: the server's own certificate, the folder of trusted clients, and the
 * rule for clients without a user name. Entry type: {@link
 * io.strapline.bridge.publish.opcua.security.Pki}. Sees no other package of the bridge.
 */
@NullMarked
package io.strapline.bridge.publish.opcua.security;

import org.jspecify.annotations.NullMarked;
