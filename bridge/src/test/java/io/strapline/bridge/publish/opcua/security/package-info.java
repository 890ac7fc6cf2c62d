/** Tests of certificates and the rule of access. */
@NullMarked
package io.strapline.bridge.publish.opcua.security;

import org.jspecify.annotations.NullMarked;
