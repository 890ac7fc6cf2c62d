package io.strapline.bridge.source.modbus;

import com.ghgande.j2mod.modbus.ModbusIOException;
import com.ghgande.j2mod.modbus.io.ModbusTCPTransport;
import com.ghgande.j2mod.modbus.msg.ExceptionResponse;
import com.ghgande.j2mod.modbus.msg.ModbusRequest;
import com.ghgande.j2mod.modbus.msg.ModbusResponse;
import com.ghgande.j2mod.modbus.msg.ReadInputRegistersRequest;
import com.ghgande.j2mod.modbus.msg.ReadInputRegistersResponse;
import com.ghgande.j2mod.modbus.msg.ReadMultipleRegistersRequest;
import com.ghgande.j2mod.modbus.msg.ReadMultipleRegistersResponse;
import com.ghgande.j2mod.modbus.procimg.InputRegister;
import io.strapline.bridge.config.DeviceLine;
import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * One connection to a device. Only an answer that fits the request in every field is taken; after
 * anything else than a proper exception answer the connection is given up, so that a late answer
 * can never be taken for the next one. One request, one try. Used by one thread; {@link #abort} may
 * be called by any.
 *
 * <p>The protocol library writes and reads the messages. Its own master is not used: after a
 * time-out it takes the late answer of one request as the answer of the next.
 */
final class DeviceLink implements Link {

  private static final int MAX_ID = 0xFFFF;
  private static final int HEADER_BYTES = 6;

  private final ModbusDevice device;
  private final DeviceLine.Tcp line;
  private volatile @Nullable DeadlineSocket socket;
  private volatile boolean aborted;
  private @Nullable Connection connection;
  private int lastId;

  private record Connection(DeadlineSocket socket, ModbusTCPTransport transport) {}

  DeviceLink(ModbusDevice device) {
    this.device = device;
    if (!(device.line() instanceof DeviceLine.Tcp tcp)) {
      throw new IllegalArgumentException(
          "DeviceLink.line = " + device.line() + ": must be a TCP connection; use RtuLink");
    }
    line = tcp;
  }

  @Override
  public byte[] read(ModbusDevice only, ReadGroup group) throws IOException {
    return read(group.function(), group.address(), group.count());
  }

  /**
   * Reads registers.
   *
   * @return the registers, high byte first, exactly as many as asked
   * @throws RefusedException when the device answers with an exception; the connection is kept
   * @throws IOException when there is no connection or no answer that fits; the connection is given
   *     up
   */
  byte[] read(int function, int address, int count) throws IOException {
    try {
      ModbusRequest request = request(function, address, count);
      return exchange(request, count);
    } catch (RefusedException refused) {
      throw refused;
    } catch (ModbusIOException failed) {
      disconnect();
      throw new IOException(failed.getMessage(), failed);
    } catch (IOException failed) {
      disconnect();
      throw failed;
    } catch (RuntimeException failed) {
      // Such as ClassCastException and IndexOutOfBoundsException on answers that do not fit.
      disconnect();
      throw new IOException("answer cannot be understood: " + failed, failed);
    }
  }

  private byte[] exchange(ModbusRequest request, int count) throws IOException, ModbusIOException {
    Connection connected = connected();
    connected.socket().allow(timeoutNanos());
    connected.transport().writeRequest(request);
    ModbusResponse answer = connected.transport().readResponse();
    // The library forgets the length of the header, so the bytes themselves are counted.
    return registers(request, answer, count, connected.socket().received() - HEADER_BYTES);
  }

  private ModbusRequest request(int function, int address, int count) {
    ModbusRequest request =
        function == 3
            ? new ReadMultipleRegistersRequest(address, count)
            : new ReadInputRegistersRequest(address, count);
    lastId = lastId == MAX_ID ? 1 : lastId + 1;
    request.setTransactionID(lastId);
    request.setUnitID(device.unitId());
    return request;
  }

  private byte[] registers(ModbusRequest request, ModbusResponse answer, int count, int length)
      throws IOException {
    require("transaction", request.getTransactionID(), answer.getTransactionID());
    require("protocol", 0, answer.getProtocolID());
    require("unit", device.unitId(), answer.getUnitID());
    if (answer instanceof ExceptionResponse refusal) {
      require("function", request.getFunctionCode() | 0x80, refusal.getFunctionCode());
      require("length", 3, length);
      throw new RefusedException("device answers exception " + refusal.getExceptionCode());
    }
    require("function", request.getFunctionCode(), answer.getFunctionCode());
    require("length", 3 + 2 * count, length);
    InputRegister[] words =
        answer instanceof ReadMultipleRegistersResponse holding
            ? holding.getRegisters()
            : ((ReadInputRegistersResponse) answer).getRegisters();
    require("number of registers", count, words.length);
    return bytes(words);
  }

  private static byte[] bytes(InputRegister[] words) {
    byte[] bytes = new byte[2 * words.length];
    for (int i = 0; i < words.length; i++) {
      int word = words[i].toUnsignedShort();
      bytes[2 * i] = (byte) (word >> 8);
      bytes[2 * i + 1] = (byte) word;
    }
    return bytes;
  }

  private static void require(String field, int expected, int got) throws IOException {
    if (expected != got) {
      throw new IOException("answer has " + field + " " + got + " instead of " + expected);
    }
  }

  private Connection connected() throws IOException {
    Connection there = connection;
    return there != null ? there : connect();
  }

  private Connection connect() throws IOException {
    DeadlineSocket fresh = new DeadlineSocket();
    socket = fresh;
    if (aborted) {
      throw new IOException("closed");
    }
    int millis = (int) Math.max(1, TimeUnit.NANOSECONDS.toMillis(timeoutNanos()));
    fresh.connect(new InetSocketAddress(line.host(), line.port()), millis);
    fresh.setTcpNoDelay(true);
    Connection made = new Connection(fresh, new ModbusTCPTransport(fresh));
    connection = made;
    return made;
  }

  private long timeoutNanos() {
    return (long) Math.min(device.timeoutSeconds() * 1e9, Integer.MAX_VALUE * 1e6);
  }

  @Override
  public void disconnect() {
    connection = null;
    closeSocket();
  }

  @Override
  public void abort() {
    aborted = true;
    closeSocket();
  }

  private void closeSocket() {
    DeadlineSocket open = socket;
    if (open != null) {
      try {
        open.close();
      } catch (IOException ignored) {
        // It is given up anyway.
        socket = null;
      }
    }
  }
}
