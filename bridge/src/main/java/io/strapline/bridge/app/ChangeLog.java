package io.strapline.bridge.app;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.reading.DiagnosticStatus;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Logs what has changed at one point since the snapshot before: quality, NE 107 status, alarms; one
 * line per change, none while all stays as it is. Stateful, one thread at a time.
 */
final class ChangeLog {

  private static final Logger LOG = LoggerFactory.getLogger(ChangeLog.class);

  private @Nullable Quality quality;
  private DiagnosticStatus status = DiagnosticStatus.NORMAL;
  private final Map<AlarmKind, AlarmState> alarms = new EnumMap<>(AlarmKind.class);

  /** Takes the next snapshot of the point. */
  void report(PointSnapshot snapshot) {
    Reading level = snapshot.level();
    reportQuality(snapshot.tag(), level.quality());
    reportStatus(snapshot.tag(), snapshot.status());
    for (AlarmSnapshot alarm : snapshot.alarms()) {
      reportAlarm(snapshot.tag(), alarm, level);
    }
  }

  private void reportQuality(String tag, Quality now) {
    Quality before = quality;
    quality = now;
    if (now.equals(before)) {
      return;
    }
    String from = before == null ? "start" : before.level() + " " + before.cause();
    String text = now.isGood() ? "" : ": " + now.cause().text();
    if (now.isBad()) {
      LOG.warn("{} quality {} -> {} {}{}", tag, from, now.level(), now.cause(), text);
    } else {
      LOG.info("{} quality {} -> {} {}{}", tag, from, now.level(), now.cause(), text);
    }
  }

  private void reportStatus(String tag, DiagnosticStatus now) {
    if (now == status) {
      return;
    }
    if (now == DiagnosticStatus.FAILURE) {
      LOG.warn("{} NE 107 status {} -> {}", tag, status, now);
    } else {
      LOG.info("{} NE 107 status {} -> {}", tag, status, now);
    }
    status = now;
  }

  private void reportAlarm(String tag, AlarmSnapshot alarm, Reading level) {
    AlarmState before = alarms.put(alarm.kind(), alarm.state());
    AlarmState from = before == null ? AlarmState.NORMAL : before;
    if (from == alarm.state()) {
      return;
    }
    String line =
        String.format(
            Locale.ROOT,
            "%s alarm %s %s -> %s at level %.3f m %s",
            tag,
            alarm.kind(),
            from.shortName(),
            alarm.state().shortName(),
            level.value(),
            level.quality().level());
    if (alarm.state().isActive() && !from.isActive()) {
      LOG.warn("{}", line);
    } else {
      LOG.info("{}", line);
    }
  }
}
