package io.strapline.bridge.source.modbus;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.util.HexFormat;
import java.util.concurrent.atomic.AtomicInteger;

/** A device that answers as a test tells it to; every register holds its address. */
final class ScriptedDevice implements AutoCloseable {

  private final ServerSocket server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
  private final AtomicInteger connections = new AtomicInteger();
  private final Script script;

  /** What is done with one request. */
  interface Script {
    /**
     * Answers.
     *
     * @param number of the request since the start, from 1
     * @param request 12 bytes
     * @param out to the client
     */
    void answer(int number, byte[] request, OutputStream out) throws Exception;
  }

  private final AtomicInteger requests = new AtomicInteger();

  ScriptedDevice(Script script) throws IOException {
    this.script = script;
    Thread acceptor = new Thread(this::accept, "scripted-device");
    acceptor.setDaemon(true);
    acceptor.start();
  }

  int port() {
    return server.getLocalPort();
  }

  int connections() {
    return connections.get();
  }

  int requests() {
    return requests.get();
  }

  private void accept() {
    try {
      while (!server.isClosed()) {
        Socket client = server.accept();
        connections.incrementAndGet();
        Thread handler = new Thread(() -> serve(client), "scripted-device-client");
        handler.setDaemon(true);
        handler.start();
      }
    } catch (IOException closed) {
      connections.addAndGet(0);
    }
  }

  private void serve(Socket client) {
    try (client) {
      DataInputStream in = new DataInputStream(client.getInputStream());
      byte[] request = in.readNBytes(12);
      while (request.length == 12) {
        script.answer(requests.incrementAndGet(), request, client.getOutputStream());
        request = in.readNBytes(12);
      }
    } catch (Exception gone) {
      connections.addAndGet(0);
    }
  }

  /** Returns the right answer to a request. */
  static byte[] right(byte[] request) {
    int address = ByteBuffer.wrap(request).getShort(8) & 0xFFFF;
    int count = ByteBuffer.wrap(request).getShort(10);
    ByteBuffer answer = ByteBuffer.allocate(9 + 2 * count);
    answer.put(request, 0, 4).putShort((short) (3 + 2 * count)).put(request, 6, 2);
    answer.put((byte) (2 * count));
    for (int i = 0; i < count; i++) {
      answer.putShort((short) (address + i));
    }
    return answer.array();
  }

  /** Returns the right answer with one byte changed. */
  static byte[] with(byte[] answer, int index, int value) {
    byte[] changed = answer.clone();
    changed[index] = (byte) value;
    return changed;
  }

  static byte[] hex(String bytes) {
    return HexFormat.of().parseHex(bytes.replace(" ", ""));
  }

  @Override
  public void close() throws IOException {
    server.close();
  }
}
