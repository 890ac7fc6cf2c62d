/**
 * What several tests of the library need. Entry type: {@link io.strapline.level.testing.CsvRows}.
 */
@NullMarked
package io.strapline.level.testing;

import org.jspecify.annotations.NullMarked;
