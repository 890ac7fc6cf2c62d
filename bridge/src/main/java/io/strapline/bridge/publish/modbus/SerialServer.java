package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.modbus.BurstReader;
import io.strapline.bridge.modbus.Crc16;
import io.strapline.bridge.modbus.RtuTiming;
import io.strapline.bridge.modbus.Wire;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The plant as a unit on a serial line (Modbus over Serial Line V1.02). Answers requests to its own
 * address alone; everything else, broken frames included, is left without an answer. A broadcast is
 * executed when it may write. A line that is lost is opened again.
 */
final class SerialServer implements AutoCloseable {

  private static final Logger LOG = LoggerFactory.getLogger(SerialServer.class);
  private static final long FIRST_PAUSE_MILLIS = 500;
  private static final long LONGEST_PAUSE_MILLIS = 30_000;
  private static final long STOP_MILLIS = 2000;
  private static final int BROADCAST = 0;

  /** A master's shortest usual time-out is a second. */
  private static final long STALE_NANOS = TimeUnit.MILLISECONDS.toNanos(500);

  private final ModbusLines.Served served;
  private final Answers answers;
  private final Wire.Opener opener;
  private final BurstReader reader;
  private final Echo echo = new Echo();
  private final CountDownLatch stopped = new CountDownLatch(1);
  private final Thread thread;
  private volatile @Nullable Wire wire;
  private long pauseMillis = FIRST_PAUSE_MILLIS;

  SerialServer(ModbusLines.Served served, Answers answers, Wire.Opener opener) {
    this.served = served;
    this.answers = answers;
    this.opener = opener;
    reader = new BurstReader(RtuTiming.of(served.line()));
    thread = new Thread(this::run, "modbus-serial-" + served.line().port());
    thread.setDaemon(true);
  }

  /**
   * Opens the line and starts serving.
   *
   * @throws IOException naming the port when it cannot be opened
   */
  void start() throws IOException {
    wire = opener.open(served.line());
    thread.start();
  }

  private void run() {
    try {
      while (stopped.getCount() > 0) {
        step();
      }
    } catch (InterruptedException closed) {
      Thread.currentThread().interrupt();
    }
  }

  private void step() throws InterruptedException {
    Wire open = wire;
    try {
      if (open == null) {
        reopen();
      } else {
        serve(open);
      }
    } catch (IOException lost) {
      giveUp(open, lost);
    } catch (RuntimeException | Error failure) {
      LOG.error("the Modbus serial server goes on after a failure inside", failure);
      stopped.await(FIRST_PAUSE_MILLIS, TimeUnit.MILLISECONDS);
    }
  }

  private void reopen() throws IOException, InterruptedException {
    stopped.await(pauseMillis, TimeUnit.MILLISECONDS);
    pauseMillis = Math.min(LONGEST_PAUSE_MILLIS, 2 * pauseMillis);
    if (stopped.getCount() > 0) {
      wire = opener.open(served.line());
      LOG.info("Modbus serves {} again", served.line().port());
      pauseMillis = FIRST_PAUSE_MILLIS;
    }
  }

  private void giveUp(@Nullable Wire lost, IOException reason) {
    if (lost != null) {
      lost.close();
      wire = null;
      if (stopped.getCount() > 0) {
        LOG.warn("Modbus lost {} and keeps trying: {}", served.line().port(), reason.getMessage());
      }
    }
  }

  private void serve(Wire line) throws IOException {
    byte[] heard = echo.without(reader.next(line));
    long now = System.nanoTime();
    Optional<byte[]> request = HeardFrames.waitingRequest(heard);
    if (request.isPresent()) {
      answer(request.get(), new Master(line, now));
    }
  }

  private void answer(byte[] request, Master master) throws IOException {
    int unit = request[0] & 0xFF;
    boolean broadcast = unit == BROADCAST;
    if (!broadcast && unit != served.unitId()) {
      return;
    }
    ByteBuffer out = ByteBuffer.allocate(Framing.MAX_FRAME);
    out.put(request[0]);
    try {
      answers.put(ByteBuffer.wrap(request, 1, request.length - 1), out, master);
    } catch (GoneException gone) {
      return;
    }
    if (!broadcast && master.line().available() == 0) {
      Crc16.append(out, 0);
      send(Arrays.copyOf(out.array(), out.position()), request, master.line());
    }
  }

  private void send(byte[] answer, byte[] request, Wire line) throws IOException {
    echo.sends(answer, withChecksum(request));
    line.write(answer);
  }

  private static byte[] withChecksum(byte[] request) {
    ByteBuffer whole = ByteBuffer.allocate(request.length + 2);
    whole.put(request);
    Crc16.append(whole, 0);
    return whole.array();
  }

  /** The master of the line. Nothing new on the line means that it still waits. */
  private final class Master implements Peer {

    private final Wire line;
    private final long heard;

    Master(Wire line, long heard) {
      this.line = line;
      this.heard = heard;
    }

    Wire line() {
      return line;
    }

    @Override
    public String name() {
      return served.line().port();
    }

    @Override
    public boolean mayWrite() {
      return served.writes();
    }

    @Override
    public boolean isThere() {
      try {
        return System.nanoTime() - heard < STALE_NANOS && line.available() == 0;
      } catch (IOException gone) {
        return false;
      }
    }
  }

  /** Frees the port. */
  @Override
  public void close() {
    stopped.countDown();
    try {
      thread.join(STOP_MILLIS);
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
    }
    Wire open = wire;
    if (open != null) {
      open.close();
    }
  }
}
