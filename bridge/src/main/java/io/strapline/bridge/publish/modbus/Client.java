package io.strapline.bridge.publish.modbus;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SelectionKey;
import java.nio.channels.SocketChannel;
import java.util.concurrent.TimeUnit;

/**
 * One connected client: bounded input, bounded output, three timers. Used by the listener's thread
 * only.
 *
 * <p>While the output is full, whole requests wait in the input and the socket is not read; they
 * are answered as soon as a flush makes room, without a further read event.
 */
final class Client implements Peer {

  private static final int INPUT_BYTES = 2048;
  private static final int OUTPUT_BYTES = 8192;

  /** A command of a client that has not taken its answers for so long is stale. */
  private static final long STALE_NANOS = TimeUnit.SECONDS.toNanos(1);

  private final SocketChannel channel;
  private final InetAddress address;
  private final Framing framing;
  private final ListenerLimits limits;
  private final boolean mayWrite;
  private final ByteBuffer in = ByteBuffer.allocate(INPUT_BYTES);
  private final ByteBuffer out = ByteBuffer.allocate(OUTPUT_BYTES);
  private long served;
  private long lastRequest;
  private long frameBegan;
  private long lastTaken;
  private boolean partial;
  private boolean ending;
  private boolean waiting;

  Client(SocketChannel channel, Service service, long now) {
    this.channel = channel;
    this.address = channel.socket().getInetAddress();
    framing = service.framing();
    limits = service.limits();
    mayWrite = service.access().mayWrite(address);
    served = now;
    lastRequest = now;
    lastTaken = now;
  }

  InetAddress address() {
    return address;
  }

  @Override
  public String name() {
    return address.getHostAddress();
  }

  @Override
  public boolean mayWrite() {
    return mayWrite;
  }

  /**
   * Returns whether the client waits for its answers, as far as can be seen: everything that it
   * sent has been read, no end of its stream came behind, and it takes its answers.
   */
  @Override
  public boolean isThere() {
    return waiting && !ending && served - lastTaken < STALE_NANOS;
  }

  /**
   * Reads, answers and writes as far as it goes.
   *
   * @return the operations to wait for next; 0 when the connection is finished
   */
  int serve(long now) throws IOException {
    served = now;
    receive();
    do {
      if (!answerWhole(now)) {
        return 0;
      }
      flush(now);
    } while (canAnswer() && wholeWaits());
    return ending && out.position() == 0 ? 0 : interest();
  }

  /** Reads until nothing is left, which also tells whether the client has hung up behind it. */
  private void receive() throws IOException {
    int got = 1;
    while (got > 0 && !ending && in.hasRemaining()) {
      got = channel.read(in);
      ending = got < 0;
    }
    waiting = got == 0;
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
    Framing.Frame next = framing.look(in);
    while (next == Framing.Frame.WHOLE && canAnswer()) {
      if (!framing.answer(in, out, this)) {
        return false;
      }
      lastRequest = now;
      partial = false;
      next = framing.look(in);
    }
    noticePartial(next == Framing.Frame.PARTIAL && in.hasRemaining(), now);
    in.compact();
    return next != Framing.Frame.BROKEN;
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
    return framing.look(in.duplicate().flip()) == Framing.Frame.WHOLE;
  }

  private boolean canAnswer() {
    return out.remaining() >= Framing.MAX_FRAME;
  }

  private int interest() {
    int write = out.position() > 0 ? SelectionKey.OP_WRITE : 0;
    int read = !ending && canAnswer() && in.hasRemaining() ? SelectionKey.OP_READ : 0;
    return write | read;
  }
}
