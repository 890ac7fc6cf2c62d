/** The library in another program: what a developer would copy. */
package io.strapline.examples.embed;
