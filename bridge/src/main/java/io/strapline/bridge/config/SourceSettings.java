package io.strapline.bridge.config;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Where the samples of a point come from. */
public sealed interface SourceSettings {

  /** What a source's values are. */
  enum Signal {
    /** Distance along the beam. */
    DISTANCE,
    /** Level above the datum. */
    LEVEL,
    /** Loop current. */
    CURRENT,
    /** Raw count of an input card. */
    RAW_COUNT
  }

  /** What the source's values are. */
  Signal signal();

  /**
   * A simulated transmitter: the level moves between two heights by filling and drawing.
   *
   * @param signal what the transmitter gives: distance or current
   * @param showsAs whether its values are marked as simulated
   * @param seed of the noise
   * @param intervalSeconds between samples, greater than zero
   * @param noiseMetres standard deviation of the distance, zero or more
   * @param process how the level moves
   * @param events faults on a timeline, in the order of their start
   */
  record Simulated(
      Signal signal,
      ShowsAs showsAs,
      long seed,
      double intervalSeconds,
      double noiseMetres,
      LevelProcess process,
      List<Event> events)
      implements SourceSettings {

    /** Copies the list. */
    public Simulated {
      events = List.copyOf(events);
    }
  }

  /** Whether simulated values are marked. */
  enum ShowsAs {
    /** Every value is UNCERTAIN, simulated, NE 107 function check: the default. */
    SIMULATED,
    /** As a live transmitter would be, for demonstrations and tests only. */
    LIVE
  }

  /**
   * How a simulated level moves: it is filled at a constant rate up to {@code fillTo}, drawn at a
   * constant rate down to {@code drawTo}, and again. Rates are of volume where the point has a
   * vessel, else of level.
   *
   * @param startLevelMetres level at the start
   * @param drawToMetres lower turning level
   * @param fillToMetres upper turning level, above the lower one
   * @param fillPerSecond m3/s (m/s without a vessel), greater than zero
   * @param drawPerSecond m3/s (m/s without a vessel), greater than zero
   */
  record LevelProcess(
      double startLevelMetres,
      double drawToMetres,
      double fillToMetres,
      double fillPerSecond,
      double drawPerSecond) {}

  /**
   * A fault of a simulated transmitter.
   *
   * @param fault what goes wrong
   * @param atSeconds start, seconds after the start of the run
   * @param forSeconds how long it lasts, greater than zero
   * @param everySeconds repeats at this period; empty for once
   */
  record Event(Fault fault, double atSeconds, double forSeconds, OptionalDouble everySeconds) {

    /** What goes wrong. */
    public enum Fault {
      /** The beam sees no surface. */
      NO_RETURN,
      /** The loop current falls into the low failure band. */
      FAULT_CURRENT_LOW,
      /** The loop current rises into the high failure band. */
      FAULT_CURRENT_HIGH,
      /** The transmitter sends nothing. */
      SILENT
    }
  }

  /**
   * A recorded series in a CSV file.
   *
   * @param signal what the value column holds
   * @param file the CSV file
   * @param format how the file is written
   * @param pace real spacing or as fast as possible
   */
  record Replay(Signal signal, Path file, ReplayFormat format, Pace pace)
      implements SourceSettings {}

  /** How fast a series is replayed. */
  enum Pace {
    /** With the spacing of the time column, shifted to begin now. */
    RECORDED,
    /** As fast as possible, with the times of the file. */
    FASTEST
  }

  /**
   * How a recorded series is written.
   *
   * @param separator between columns
   * @param decimal decimal separator, point or comma
   * @param timeColumn header of the time column
   * @param timePattern pattern of {@link java.time.format.DateTimeFormatter}; empty for ISO 8601
   * @param timeZone zone of times without one, such as UTC or Europe/Berlin
   * @param value the value column
   */
  record ReplayFormat(
      char separator,
      char decimal,
      String timeColumn,
      Optional<String> timePattern,
      String timeZone,
      ValueColumn value) {}

  /**
   * The value column of a recorded series.
   *
   * @param header its header
   * @param toSi factor from the column's unit to metres, mA or counts
   */
  record ValueColumn(String header, double toSi) {}

  /**
   * A register of a device that is polled over Modbus.
   *
   * @param signal what the register holds
   * @param device where it is; points with equal devices are read together
   * @param register which register
   */
  record Modbus(Signal signal, ModbusDevice device, ModbusRegister register)
      implements SourceSettings {}

  /**
   * A Modbus device.
   *
   * @param line the way to it
   * @param unitId 0 to 255
   * @param pollSeconds period, greater than zero
   * @param timeoutSeconds of one answer, greater than zero
   * @param backOffSeconds longest pause between attempts to reach it, greater than zero
   */
  record ModbusDevice(
      DeviceLine line,
      int unitId,
      double pollSeconds,
      double timeoutSeconds,
      double backOffSeconds) {

    /** A Modbus TCP device. */
    public ModbusDevice(
        String host,
        int port,
        int unitId,
        double pollSeconds,
        double timeoutSeconds,
        double backOffSeconds) {
      this(
          new DeviceLine.Tcp(host, port, ModbusLines.Framing.TCP),
          unitId,
          pollSeconds,
          timeoutSeconds,
          backOffSeconds);
    }
  }

  /**
   * A value in a device's registers.
   *
   * @param function 3 (holding) or 4 (input registers)
   * @param address PDU address, 0 to 65535
   * @param type how the value is carried
   * @param order of words and bytes for types wider than one register
   * @param toSi factor from the register's number to metres, mA or counts
   */
  record ModbusRegister(
      int function, int address, RegisterType type, ModbusSettings.WordOrder order, double toSi) {}

  /** How a register value is carried. */
  enum RegisterType {
    /** Signed 16 bit. */
    INT16,
    /** Unsigned 16 bit. */
    UINT16,
    /** Signed 32 bit in two registers. */
    INT32,
    /** Unsigned 32 bit in two registers. */
    UINT32,
    /** IEEE 754 single in two registers. */
    FLOAT32
  }
}
