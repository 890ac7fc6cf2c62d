package io.strapline.bridge.config;

/** The line to one or more Modbus devices. */
public sealed interface DeviceLine {

  /** Returns its name in messages: host and port, or the serial port. */
  String name();

  /** Returns whether several units share the line, one request at a time. */
  boolean isShared();

  /**
   * A TCP connection.
   *
   * @param host name or address
   * @param port TCP port
   * @param framing Modbus TCP, where each unit has a connection of its own, or serial frames
   */
  record Tcp(String host, int port, ModbusLines.Framing framing) implements DeviceLine {

    @Override
    public String name() {
      return host + ":" + port;
    }

    @Override
    public boolean isShared() {
      return framing == ModbusLines.Framing.RTU;
    }
  }

  /**
   * A serial line.
   *
   * @param line its settings
   */
  record Serial(SerialLine line) implements DeviceLine {

    @Override
    public String name() {
      return line.port();
    }

    @Override
    public boolean isShared() {
      return true;
    }
  }
}
