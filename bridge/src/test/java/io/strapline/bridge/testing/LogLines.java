package io.strapline.bridge.testing;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.util.List;
import org.slf4j.LoggerFactory;

/** The log lines of one class while a test runs. Close it in the end. */
public final class LogLines implements AutoCloseable {

  private final Logger logger;
  private final ListAppender<ILoggingEvent> appender = new ListAppender<>();

  /** Begins to listen. */
  public LogLines(Class<?> type) {
    logger = (Logger) LoggerFactory.getLogger(type);
    appender.start();
    logger.addAppender(appender);
  }

  /** Returns the lines so far, each with its level in front. */
  public List<String> lines() {
    return List.copyOf(appender.list).stream()
        .map(event -> event.getLevel() + " " + event.getFormattedMessage())
        .toList();
  }

  @Override
  public void close() {
    logger.detachAppender(appender);
  }
}
