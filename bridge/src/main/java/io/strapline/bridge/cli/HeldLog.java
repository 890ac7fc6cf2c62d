package io.strapline.bridge.cli;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.encoder.PatternLayoutEncoder;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.Appender;
import ch.qos.logback.core.AppenderBase;
import ch.qos.logback.core.ConsoleAppender;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.slf4j.LoggerFactory;

/**
 * Keeps the lines that would be logged to the terminal, so that they can be printed above a live
 * table instead of into it. No line is lost: what nobody has taken is printed at the close. Safe
 * for any thread.
 */
final class HeldLog implements AutoCloseable {

  private final Logger root = (Logger) LoggerFactory.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
  private final List<ConsoleAppender<ILoggingEvent>> replaced = new ArrayList<>();
  private final ConcurrentLinkedQueue<String> lines = new ConcurrentLinkedQueue<>();
  private final Holding holding = new Holding();

  HeldLog() {
    for (Iterator<Appender<ILoggingEvent>> all = root.iteratorForAppenders(); all.hasNext(); ) {
      if (all.next() instanceof ConsoleAppender<ILoggingEvent> console) {
        replaced.add(console);
      }
    }
    replaced.forEach(root::detachAppender);
    holding.setContext(root.getLoggerContext());
    holding.start();
    root.addAppender(holding);
  }

  private final class Holding extends AppenderBase<ILoggingEvent> {

    @Override
    protected void append(ILoggingEvent event) {
      for (ConsoleAppender<ILoggingEvent> console : replaced) {
        if (console.getEncoder() instanceof PatternLayoutEncoder encoder) {
          String text = new String(encoder.encode(event), StandardCharsets.UTF_8);
          lines.addAll(text.lines().toList());
        }
      }
    }
  }

  /** Returns the lines since the last call. */
  List<String> take() {
    List<String> taken = new ArrayList<>();
    String line = lines.poll();
    while (line != null) {
      taken.add(line);
      line = lines.poll();
    }
    return taken;
  }

  /** Lets the log go to the terminal again. */
  @Override
  public void close() {
    root.detachAppender(holding);
    replaced.forEach(root::addAppender);
    take().forEach(System.err::println);
  }
}
