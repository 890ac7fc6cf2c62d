/**
 * What can be told of a transmitter from its own samples: weak returns, noise, a value that stands
 * still, speeds that no surface has, a loop that carries no more. Entry type: {@link
 * io.strapline.level.diagnosis.SignalDiagnosis}. May import {@code reading}, {@code units} and
 * {@code internal}.
 */
@NullMarked
package io.strapline.level.diagnosis;

import org.jspecify.annotations.NullMarked;
