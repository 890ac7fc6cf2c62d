package io.strapline.bridge.app;

import io.strapline.level.alarm.AlarmKind;
import io.strapline.level.alarm.AlarmSnapshot;
import io.strapline.level.alarm.AlarmState;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.reading.Cause;
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
 * Logs what has changed at one point since the snapshot before: quality with NE 107 status, alarms;
 * one line per change, none while all stays as it is. Stateful, one thread at a time.
 */
final class ChangeLog {

  private static final Logger LOG = LoggerFactory.getLogger(ChangeLog.class);

  private @Nullable Quality quality;
  private DiagnosticStatus status = DiagnosticStatus.NORMAL;
  private final Map<AlarmKind, AlarmState> alarms = new EnumMap<>(AlarmKind.class);

  /** Takes the next snapshot of the point. */
  void report(PointSnapshot snapshot) {
    Reading level = snapshot.level();
    reportQuality(snapshot.tag(), level.quality(), snapshot.status());
    for (AlarmSnapshot alarm : snapshot.alarms()) {
      reportAlarm(snapshot.tag(), alarm, level);
    }
  }

  private void reportQuality(String tag, Quality now, DiagnosticStatus nowStatus) {
    Quality before = quality;
    DiagnosticStatus statusBefore = status;
    quality = now;
    status = nowStatus;
    // A point that waits for its first sample at the start is no news.
    boolean waiting = before == null && now.cause() == Cause.WAITING_FOR_FIRST_SAMPLE;
    if (waiting || (now.equals(before) && nowStatus == statusBefore)) {
      return;
    }
    String from = before == null ? "start" : text(before, statusBefore);
    String line = tag + " " + from + " -> " + text(now, nowStatus);
    String why = now.isGood() ? "" : ": " + now.cause().text();
    if (now.isBad()) {
      LOG.warn("{}{}", line, why);
    } else {
      LOG.info("{}{}", line, why);
    }
  }

  private static String text(Quality quality, DiagnosticStatus status) {
    String cause = quality.isGood() ? "" : " " + quality.cause();
    String ne107 = status == DiagnosticStatus.NORMAL ? "" : " (NE 107 " + status.letter() + ")";
    return quality.level() + cause + ne107;
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
