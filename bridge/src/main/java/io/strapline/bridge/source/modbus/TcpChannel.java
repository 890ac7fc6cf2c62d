package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.DeviceLine;
import java.io.EOFException;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketTimeoutException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Serial frames over a TCP connection. */
final class TcpChannel implements RtuChannel {

  private static final Logger LOG = LoggerFactory.getLogger(TcpChannel.class);
  private static final int WAIT_MILLIS = 100;

  private final Socket socket = new Socket();

  /** Connects. */
  static TcpChannel open(DeviceLine.Tcp line, int timeoutMillis) throws IOException {
    TcpChannel channel = new TcpChannel();
    try {
      channel.socket.connect(new InetSocketAddress(line.host(), line.port()), timeoutMillis);
      channel.socket.setTcpNoDelay(true);
      channel.socket.setSoTimeout(WAIT_MILLIS);
      return channel;
    } catch (IOException failed) {
      channel.close();
      throw failed;
    }
  }

  @Override
  public void send(byte[] frame) throws IOException {
    socket.getOutputStream().write(frame);
  }

  @Override
  public int receive(byte[] buffer) throws IOException {
    try {
      int got = socket.getInputStream().read(buffer);
      if (got < 0) {
        throw new EOFException("the connection was ended");
      }
      return got;
    } catch (SocketTimeoutException nothing) {
      return 0;
    }
  }

  @Override
  public void drop() throws IOException {
    byte[] dropped = new byte[256];
    while (socket.getInputStream().available() > 0 && receive(dropped) > 0) {
      LOG.trace("bytes that nobody asked for were dropped");
    }
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException ignored) {
      // It is given up anyway.
      LOG.trace("closing failed", ignored);
    }
  }
}
