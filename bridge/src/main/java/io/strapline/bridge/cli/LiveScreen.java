package io.strapline.bridge.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;

/**
 * The last few lines of a terminal, drawn again and again in place; whatever else is to be printed
 * scrolls by above them. Not thread-safe.
 */
final class LiveScreen {

  private static final String ERASE_BELOW = "\u001b[J";
  private static final String WRAP_OFF = "\u001b[?7l";
  private static final String WRAP_ON = "\u001b[?7h";

  private final PrintWriter out;
  private int drawn;

  LiveScreen(PrintWriter out) {
    this.out = out;
  }

  /** Prints lines that stay, then draws the ones that will be drawn over. */
  void draw(List<String> staying, List<String> drawnOver) {
    StringBuilder text = new StringBuilder();
    if (drawn > 0) {
      text.append(String.format(Locale.ROOT, "\u001b[%dA", drawn));
    }
    text.append('\r').append(ERASE_BELOW);
    staying.forEach(line -> text.append(line).append('\n'));
    // A line that wraps would take two rows of the screen and spoil the count.
    text.append(WRAP_OFF);
    drawnOver.forEach(line -> text.append(line).append('\n'));
    text.append(WRAP_ON);
    out.print(text);
    out.flush();
    drawn = drawnOver.size();
  }
}
