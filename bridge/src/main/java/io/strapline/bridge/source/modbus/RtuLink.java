package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.DeviceLine;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import io.strapline.bridge.modbus.Crc16;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A line with serial frames to several units. These frames carry no number that tells the answer of
 * one request from that of the next. So after anything but a fitting answer a serial line is
 * listened to for one more time-out and all of it dropped, and a TCP connection is given up. What
 * is there before a request is dropped too.
 */
final class RtuLink implements Link {

  private static final int HEAD = 3;
  private static final int EXCEPTION_BYTES = 5;
  private static final int REQUEST_BYTES = 8;
  private static final int LONGEST = 256;

  private final DeviceLine line;
  private final Opener opener;
  private final byte[] chunk = new byte[LONGEST];
  private volatile @Nullable RtuChannel channel;
  private volatile boolean aborted;

  /** Opens the line. */
  interface Opener {
    /** Opens a line, waiting so long at most. */
    RtuChannel open(DeviceLine line, int timeoutMillis) throws IOException;
  }

  RtuLink(DeviceLine line, Opener opener) {
    this.line = line;
    this.opener = opener;
  }

  /** Returns the link of a line of this machine. */
  static RtuLink of(DeviceLine line) {
    return new RtuLink(line, RtuLink::open);
  }

  private static RtuChannel open(DeviceLine line, int timeoutMillis) throws IOException {
    if (line instanceof DeviceLine.Tcp tcp) {
      return TcpChannel.open(tcp, timeoutMillis);
    }
    if (line instanceof DeviceLine.Serial serial) {
      return SerialChannel.open(serial.line());
    }
    throw new IllegalStateException("a line that is not known: " + line);
  }

  @Override
  public byte[] read(ModbusDevice device, ReadGroup group) throws IOException {
    RtuChannel open = connected(device);
    try {
      return exchange(open, device, group);
    } catch (RefusedException refused) {
      throw refused;
    } catch (IOException | RuntimeException failed) {
      spoil(open, device);
      throw failed instanceof IOException known
          ? known
          : new IOException(failed.toString(), failed);
    }
  }

  private RtuChannel connected(ModbusDevice device) throws IOException {
    if (aborted) {
      throw new IOException("closed");
    }
    RtuChannel there = channel;
    if (there == null) {
      there = opener.open(line, (int) Math.max(1, nanos(device) / 1_000_000));
      channel = there;
    }
    if (aborted) {
      disconnect();
      throw new IOException("closed");
    }
    return there;
  }

  private static long nanos(ModbusDevice device) {
    return (long) Math.min(device.timeoutSeconds() * 1e9, Integer.MAX_VALUE * 1e6);
  }

  private byte[] exchange(RtuChannel open, ModbusDevice device, ReadGroup group)
      throws IOException {
    byte[] request = request(device.unitId(), group);
    open.drop();
    open.send(request);
    Answer answer = new Answer(request, group.count());
    long deadline = System.nanoTime() + nanos(device);
    while (!answer.isWhole()) {
      if (System.nanoTime() - deadline > 0) {
        throw new IOException("no complete answer in time");
      }
      answer.add(chunk, open.receive(chunk));
    }
    return answer.registers();
  }

  private static byte[] request(int unit, ReadGroup group) {
    ByteBuffer request = ByteBuffer.allocate(REQUEST_BYTES);
    request.put((byte) unit).put((byte) group.function());
    request.putShort((short) group.address()).putShort((short) group.count());
    Crc16.append(request, 0);
    return request.array();
  }

  // A late answer must not be taken for that of the next request.
  private void spoil(RtuChannel open, ModbusDevice device) {
    long quiet = System.nanoTime() + nanos(device);
    if (line instanceof DeviceLine.Tcp) {
      disconnect();
      return;
    }
    try {
      while (!aborted && System.nanoTime() - quiet < 0) {
        open.receive(chunk);
      }
    } catch (IOException gone) {
      disconnect();
    }
  }

  @Override
  public void disconnect() {
    RtuChannel open = channel;
    channel = null;
    if (open != null) {
      open.close();
    }
  }

  @Override
  public void abort() {
    aborted = true;
    RtuChannel open = channel;
    if (open != null) {
      open.close();
    }
  }

  /** The answer to one request, as far as it has come. */
  private static final class Answer {

    private final byte[] request;
    private final int count;
    private byte[] got = {};
    private boolean echoDropped;

    Answer(byte[] request, int count) {
      this.request = request;
      this.count = count;
    }

    void add(byte[] bytes, int length) throws IOException {
      if (got.length + length > 2 * LONGEST) {
        throw new IOException("answer is longer than any frame");
      }
      int had = got.length;
      got = Arrays.copyOf(got, had + length);
      System.arraycopy(bytes, 0, got, had, length);
      dropEcho();
      check();
    }

    // A two-wire adapter may hear what it sends.
    private void dropEcho() {
      if (!echoDropped
          && got.length >= REQUEST_BYTES
          && Arrays.equals(got, 0, REQUEST_BYTES, request, 0, REQUEST_BYTES)) {
        got = Arrays.copyOfRange(got, REQUEST_BYTES, got.length);
        echoDropped = true;
      }
    }

    private boolean mayBeEcho() {
      int there = Math.min(got.length, REQUEST_BYTES);
      return !echoDropped
          && there < REQUEST_BYTES
          && Arrays.equals(got, 0, there, request, 0, there);
    }

    private int expected() {
      return got.length > 1 && (got[1] & 0x80) != 0 ? EXCEPTION_BYTES : HEAD + 2 * count + 2;
    }

    boolean isWhole() {
      return got.length >= expected() && (!mayBeEcho() || isRight());
    }

    private boolean isRight() {
      return Crc16.isRight(ByteBuffer.wrap(got), 0, got.length);
    }

    private void check() throws IOException {
      if (mayBeEcho()) {
        return;
      }
      require("unit", 0, request[0] & 0xFF);
      if (got.length > 1 && (got[1] & 0x7F) != (request[1] & 0xFF)) {
        require("function", 1, request[1] & 0xFF);
      }
      if (got.length > 2 && (got[1] & 0x80) == 0) {
        require("byte count", 2, 2 * count);
      }
      if (got.length > expected()) {
        throw new IOException("answer has " + got.length + " bytes instead of " + expected());
      }
    }

    private void require(String field, int index, int wanted) throws IOException {
      if (got.length > index && (got[index] & 0xFF) != wanted) {
        throw new IOException(
            "answer has " + field + " " + (got[index] & 0xFF) + " instead of " + wanted);
      }
    }

    byte[] registers() throws IOException {
      if (!isRight()) {
        throw new IOException("answer has a wrong checksum");
      }
      if ((got[1] & 0x80) != 0) {
        throw new RefusedException("device answers exception " + got[2]);
      }
      return Arrays.copyOfRange(got, HEAD, got.length - 2);
    }
  }
}
