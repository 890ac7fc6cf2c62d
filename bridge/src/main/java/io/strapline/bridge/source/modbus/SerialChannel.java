package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.SerialLine;
import io.strapline.bridge.modbus.RtuTiming;
import io.strapline.bridge.modbus.SerialPortWire;
import io.strapline.bridge.modbus.Wire;
import java.io.IOException;
import java.util.concurrent.locks.LockSupport;

/** A serial line; keeps the silence between frames. */
final class SerialChannel implements RtuChannel {

  private final Wire wire;
  private final SerialLine line;
  private final RtuTiming timing;
  private long busyUntil = System.nanoTime();

  private SerialChannel(Wire wire, SerialLine line) {
    this.wire = wire;
    this.line = line;
    timing = RtuTiming.of(line);
  }

  /** Opens the port. */
  static SerialChannel open(SerialLine line) throws IOException {
    return new SerialChannel(SerialPortWire.open(line), line);
  }

  @Override
  public void send(byte[] frame) throws IOException {
    long free = busyUntil + timing.endNanos();
    for (long left = free - System.nanoTime(); left > 0; left = free - System.nanoTime()) {
      LockSupport.parkNanos(left);
    }
    wire.write(frame);
    busyUntil = System.nanoTime() + RtuTiming.nanos(line, frame.length);
  }

  @Override
  public int receive(byte[] buffer) throws IOException {
    int got = wire.read(buffer);
    if (got > 0) {
      busyUntil = System.nanoTime();
    }
    return got;
  }

  @Override
  public void drop() throws IOException {
    byte[] dropped = new byte[256];
    while (wire.available() > 0 && receive(dropped) > 0) {
      busyUntil = System.nanoTime();
    }
  }

  @Override
  public void close() {
    wire.close();
  }
}
