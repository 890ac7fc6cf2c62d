package io.strapline.bridge.modbus;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import io.strapline.bridge.config.SerialLine;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;

/** A serial port of this machine. */
public final class SerialPortWire implements Wire {

  private static final int DATA_BITS = 8;

  /** On Linux the port waits in tenths of a second. */
  private static final int WAIT_MILLIS = 100;

  private final SerialPort port;
  private final String name;

  private SerialPortWire(SerialPort port, String name) {
    this.port = port;
    this.name = name;
  }

  /**
   * Opens a port.
   *
   * @throws IOException naming the port when it is not there or taken
   */
  public static Wire open(SerialLine line) throws IOException {
    SerialPort port = find(line.port());
    port.setComPortParameters(line.baud(), DATA_BITS, stopBits(line), parity(line));
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, WAIT_MILLIS, 0);
    if (!port.openPort()) {
      throw new IOException(
          "serial port "
              + line.port()
              + " cannot be opened (code "
              + port.getLastErrorCode()
              + "); connect it, free it, and give this user the right to it");
    }
    return new SerialPortWire(port, line.port());
  }

  private static SerialPort find(String name) throws IOException {
    try {
      return SerialPort.getCommPort(resolved(name));
    } catch (SerialPortInvalidPortException absent) {
      throw new IOException(
          "serial port " + name + " is not there; connect it, or correct its name", absent);
    }
  }

  // Links such as those in /dev/serial/by-id are followed to the device.
  private static String resolved(String name) throws IOException {
    try {
      Path path = Path.of(name);
      return path.isAbsolute() && Files.exists(path) ? path.toRealPath().toString() : name;
    } catch (InvalidPathException noPath) {
      return name;
    }
  }

  private static int stopBits(SerialLine line) {
    return line.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT;
  }

  private static int parity(SerialLine line) {
    return switch (line.parity()) {
      case EVEN -> SerialPort.EVEN_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case NONE -> SerialPort.NO_PARITY;
    };
  }

  @Override
  public int read(byte[] buffer) throws IOException {
    return there(port.readBytes(buffer, buffer.length));
  }

  @Override
  public int available() throws IOException {
    return there(port.bytesAvailable());
  }

  @Override
  public void write(byte[] bytes) throws IOException {
    int sent = 0;
    while (sent < bytes.length) {
      byte[] rest = sent == 0 ? bytes : Arrays.copyOfRange(bytes, sent, bytes.length);
      int taken = there(port.writeBytes(rest, rest.length));
      if (taken == 0) {
        throw new IOException("serial port " + name + " takes nothing");
      }
      sent += taken;
    }
  }

  private int there(int result) throws IOException {
    if (result < 0) {
      throw new IOException("serial port " + name + " is gone");
    }
    return result;
  }

  @Override
  public void close() {
    port.closePort();
  }
}
