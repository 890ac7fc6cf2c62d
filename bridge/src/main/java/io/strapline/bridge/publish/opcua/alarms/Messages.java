package io.strapline.bridge.publish.opcua.alarms;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.point.PointSnapshot;
import java.util.Locale;

/** What a change of a condition is called in a message. Stateless. */
final class Messages {

  private Messages() {}

  static String of(ConditionSpec spec, Standing standing, PointSnapshot snapshot) {
    return spec.tag() + ": " + what(spec, standing, snapshot) + acknowledged(standing);
  }

  private static String what(ConditionSpec spec, Standing standing, PointSnapshot snapshot) {
    String title = spec.subject().title().toLowerCase(Locale.ROOT);
    if (standing.leading().isEmpty()) {
      return standing.acknowledged() ? title + " normal" : title + " gone";
    }
    AlarmKind kind = standing.leading().get();
    String held = standing.latched() ? ", held by latching" : "";
    return kind == AlarmKind.BAD_SIGNAL
        ? title + held + ", " + snapshot.level().quality().cause().text()
        : limit(kind) + " alarm" + held + ", " + level(snapshot) + setPoint(spec, kind);
  }

  private static String limit(AlarmKind kind) {
    return switch (kind) {
      case HIGH_HIGH -> "high-high";
      case HIGH -> "high";
      case LOW -> "low";
      case LOW_LOW -> "low-low";
      case BAD_SIGNAL -> "bad-signal";
    };
  }

  private static String level(PointSnapshot snapshot) {
    var usable = snapshot.level().usable();
    return usable.isPresent()
        ? String.format(Locale.ROOT, "level %.3f m", usable.getAsDouble())
        : "level not known";
  }

  private static String setPoint(ConditionSpec spec, AlarmKind kind) {
    var metres = spec.setPoint(kind);
    return metres.isPresent()
        ? String.format(Locale.ROOT, ", limit %.3f m", metres.getAsDouble())
        : "";
  }

  private static String acknowledged(Standing standing) {
    if (!standing.acknowledged()) {
      return ", not acknowledged";
    }
    return standing.active() ? ", acknowledged" : "";
  }
}
