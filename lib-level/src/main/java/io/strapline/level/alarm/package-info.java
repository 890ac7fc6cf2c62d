/**
 * Alarms on the ISA-18.2 state model: level limits and the bad-signal alarm that holds them back.
 * Entry type: {@link io.strapline.level.alarm.AlarmGroup}. May import {@code reading}, {@code
 * units} and {@code internal}.
 */
@NullMarked
package io.strapline.level.alarm;

import org.jspecify.annotations.NullMarked;
