package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.modbus.Wire;
import java.io.IOException;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;

/** A serial line made of two queues; each element is what one silence parts from the next. */
final class TestWire implements Wire {

  private final BlockingQueue<byte[]> toServer = new LinkedBlockingQueue<>();
  private final BlockingQueue<byte[]> fromServer = new LinkedBlockingQueue<>();
  private final boolean echoes;
  private volatile boolean gone;

  /** Makes a line; on one that echoes the server hears what it sends. */
  TestWire(boolean echoes) {
    this.echoes = echoes;
  }

  void say(byte[] burst) {
    toServer.add(burst);
  }

  /** Returns the next answer; empty when there is none within the time. */
  byte[] hear(long millis) throws InterruptedException {
    byte[] answer = fromServer.poll(millis, TimeUnit.MILLISECONDS);
    return answer == null ? new byte[0] : answer;
  }

  void unplug() {
    gone = true;
  }

  @Override
  public int read(byte[] buffer) throws IOException {
    check();
    try {
      byte[] burst = toServer.poll(10, TimeUnit.MILLISECONDS);
      if (burst == null) {
        return 0;
      }
      int taken = Math.min(buffer.length, burst.length);
      System.arraycopy(burst, 0, buffer, 0, taken);
      return taken;
    } catch (InterruptedException interrupted) {
      Thread.currentThread().interrupt();
      return 0;
    }
  }

  // What waits is behind a silence, so it cannot be read at once.
  @Override
  public int available() throws IOException {
    check();
    return 0;
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    check();
    if (echoes) {
      toServer.add(bytes.clone());
    }
    fromServer.add(bytes.clone());
  }

  private void check() throws IOException {
    if (gone) {
      throw new IOException("unplugged");
    }
  }

  @Override
  public void close() {
    gone = true;
  }
}
