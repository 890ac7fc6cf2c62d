package io.strapline.bridge.publish.modbus;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.SocketChannel;

/**
 * One connected client: bounded input, bounded output, three timers. Used by the listener's thread
 * only.
 *
 * <p>While the output is full, whole requests wait in the input and the socket is not read; they
 * are answered as soon as a flush makes room, without a further read event.
 */
final class Client {

  private static final int INPUT_BYTES = 2048;
  private static final int OUTPUT_BYTES = 8192;

  private final SocketChannel channel;
  private final InetAddress address;
  private final ReadRequests requests;
  private final ListenerLimits limits;
  private final ByteBuffer in = ByteBuffer.allocate(INPUT_BYTES);
  private final ByteBuffer out = ByteBuffer.allocate(OUTPUT_BYTES);
  private long lastRequest;
  private long frameBegan;
  private long lastTaken;
  private boolean partial;
  private boolean ending;

  Client(SocketChannel channel, ReadRequests requests, ListenerLimits limits, long now) {
    this.channel = channel;
    this.address = channel.socket().getInetAddress();
    this.requests = requests;
    this.limits = limits;
    lastRequest = now;
    lastTaken = now;
  }

  InetAddress address() {
    return address;
  }

  /**
   * Reads, answers and writes as far as it goes.
   *
   * @return the operations to wait for next; 0 when the connection is finished
   */
  int serve(long now) throws IOException {
    if (!ending && canAnswer() && in.hasRemaining()) {
      ending = channel.read(in) < 0;
    }
    do {
      if (!answerWhole(now)) {
        return 0;
      }
      flush(now);
    } while (canAnswer() && wholeWaits());
    return ending && out.position() == 0 ? 0 : interest();
  }

  /** Returns why the client must be dropped now, or an empty text. */
  String overdue(long now) {
    if (partial && now - frameBegan > limits.frame().toNanos()) {
      return "sent no complete frame in time";
    }
    if (out.position() > 0 && now - lastTaken > limits.stalled().toNanos()) {
      return "takes no answers";
    }
    return now - lastRequest > limits.idle().toNanos() ? "was idle" : "";
  }

  /** Returns false when the bytes are no Modbus. */
  private boolean answerWhole(long now) {
    if (out.position() == 0) {
      lastTaken = now;
    }
    in.flip();
    Mbap.Frame next = Mbap.look(in);
    while (next == Mbap.Frame.WHOLE && canAnswer()) {
      if (!requests.answer(Mbap.take(in), out)) {
        return false;
      }
      lastRequest = now;
      partial = false;
      next = Mbap.look(in);
    }
    noticePartial(next == Mbap.Frame.PARTIAL && in.hasRemaining(), now);
    in.compact();
    return next != Mbap.Frame.BROKEN;
  }

  private void noticePartial(boolean begun, long now) {
    if (begun && !partial) {
      frameBegan = now;
    }
    partial = begun;
  }

  private void flush(long now) throws IOException {
    out.flip();
    int taken = channel.write(out);
    out.compact();
    if (taken > 0) {
      lastTaken = now;
    }
  }

  private boolean wholeWaits() {
    return Mbap.look(in.duplicate().flip()) == Mbap.Frame.WHOLE;
  }

  private boolean canAnswer() {
    return out.remaining() >= ReadRequests.MAX_FRAME;
  }

  private int interest() {
    int write = out.position() > 0 ? SelectionKey.OP_WRITE : 0;
    int read = !ending && canAnswer() && in.hasRemaining() ? SelectionKey.OP_READ : 0;
    return write | read;
  }
}
