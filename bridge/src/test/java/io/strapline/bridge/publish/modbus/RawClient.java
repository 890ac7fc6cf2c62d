package io.strapline.bridge.publish.modbus;

import java.io.DataInputStream;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;

/** A plain socket to a Modbus TCP server, for tests that look at bytes. */
final class RawClient implements AutoCloseable {

  private static final int PATIENCE_MILLIS = 10_000;

  private final Socket socket = new Socket();
  private final DataInputStream in;

  RawClient(int port) throws IOException {
    this(port, 1);
  }

  /** Connects from the loopback address 127.0.0.{@code last}. */
  RawClient(int port, int last) throws IOException {
    socket.setTcpNoDelay(true);
    socket.setSoTimeout(PATIENCE_MILLIS);
    socket.bind(new InetSocketAddress(loopback(last), 0));
    socket.connect(new InetSocketAddress(loopback(1), port), PATIENCE_MILLIS);
    in = new DataInputStream(socket.getInputStream());
  }

  private static InetAddress loopback(int last) throws IOException {
    return InetAddress.getByAddress(new byte[] {127, 0, 0, (byte) last});
  }

  Socket socket() {
    return socket;
  }

  void send(byte... bytes) throws IOException {
    socket.getOutputStream().write(bytes);
  }

  /** Reads one answer, from the transaction identifier to the end of its PDU. */
  byte[] receive() throws IOException {
    byte[] head = in.readNBytes(6);
    if (head.length < 6) {
      throw new IOException("connection ended: " + Bytes.text(head));
    }
    int length = (head[4] & 0xFF) << 8 | (head[5] & 0xFF);
    byte[] frame = new byte[6 + length];
    System.arraycopy(head, 0, frame, 0, 6);
    in.readFully(frame, 6, length);
    return frame;
  }

  /** Sends a PDU to unit 1 and returns the PDU of the answer. */
  byte[] ask(byte... pdu) throws IOException {
    send(Bytes.frame(1, 1, pdu));
    byte[] frame = receive();
    return java.util.Arrays.copyOfRange(frame, 7, frame.length);
  }

  /** Reads {@code count} registers of function 03 or throws. */
  int[] registers(int address, int count) throws IOException {
    byte[] answer =
        ask((byte) 3, (byte) (address >> 8), (byte) address, (byte) (count >> 8), (byte) count);
    if (answer[0] != 3) {
      throw new IOException("exception " + Bytes.text(answer));
    }
    int[] registers = new int[count];
    for (int i = 0; i < count; i++) {
      registers[i] = (answer[2 + 2 * i] & 0xFF) << 8 | (answer[3 + 2 * i] & 0xFF);
    }
    return registers;
  }

  /** Returns whether the server ends the connection without sending anything more. */
  boolean isClosedByServer() throws IOException {
    try {
      return in.read() < 0;
    } catch (java.net.SocketTimeoutException stillOpen) {
      return false;
    } catch (java.net.SocketException reset) {
      return true;
    }
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
