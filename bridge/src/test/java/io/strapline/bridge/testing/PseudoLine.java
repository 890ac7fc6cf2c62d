package io.strapline.bridge.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** Two pseudo-terminals that are joined like a serial line, by socat. */
public final class PseudoLine implements AutoCloseable {

  private static final String MARK = "PTY is ";

  private final Process socat;
  private final List<String> ports;

  private PseudoLine(Process socat, List<String> ports) {
    this.socat = socat;
    this.ports = List.copyOf(ports);
  }

  /** Opens a line, or skips the calling test where socat is missing. */
  public static PseudoLine open() throws IOException {
    Peers.require("socat", "socat", "-V");
    Process socat =
        new ProcessBuilder("socat", "-d", "-d", "pty,raw,echo=0", "pty,raw,echo=0")
            .redirectErrorStream(true)
            .start();
    BufferedReader told =
        new BufferedReader(new InputStreamReader(socat.getInputStream(), StandardCharsets.UTF_8));
    List<String> ports = new ArrayList<>();
    String line = told.readLine();
    while (line != null && ports.size() < 2) {
      if (line.contains(MARK)) {
        ports.add(line.substring(line.indexOf(MARK) + MARK.length()).strip());
      }
      line = ports.size() < 2 ? told.readLine() : line;
    }
    if (ports.size() < 2) {
      socat.destroyForcibly();
      throw new IOException("socat made no pair of pseudo-terminals: " + ports);
    }
    return new PseudoLine(socat, ports);
  }

  /** Returns the name of one end. */
  public String one() {
    return ports.get(0);
  }

  /** Returns the name of the other end. */
  public String two() {
    return ports.get(1);
  }

  @Override
  public void close() {
    socat.destroy();
    try {
      if (!socat.waitFor(10, TimeUnit.SECONDS)) {
        socat.destroyForcibly();
      }
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
  }
}
