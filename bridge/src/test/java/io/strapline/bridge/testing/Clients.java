package io.strapline.bridge.testing;

import com.ghgande.j2mod.modbus.ModbusException;
import com.ghgande.j2mod.modbus.facade.ModbusTCPMaster;
import com.ghgande.j2mod.modbus.procimg.Register;
import io.strapline.bridge.publish.opcua.NodeList;
import java.net.URI;
import java.util.Objects;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.enumerated.TimestampsToReturn;

/** A client of each protocol, connected to one bridge. One thread at a time. */
public final class Clients implements AutoCloseable {

  private final OpcUaClient opcUa;
  private final ModbusTCPMaster modbus;

  private Clients(OpcUaClient opcUa, ModbusTCPMaster modbus) {
    this.opcUa = opcUa;
    this.modbus = modbus;
  }

  /**
   * A level as read from a point's register block.
   *
   * @param asFloat from the float registers
   * @param asMillimetres from the integer registers
   * @param asDouble from the double registers
   * @param quality of the double registers' group
   */
  public record ModbusLevel(float asFloat, int asMillimetres, double asDouble, int quality) {}

  /** Connects to both servers. */
  public static Clients connect(String opcUaUrl, String modbusUrl) throws Exception {
    OpcUaClient opcUa = OpcUaClient.create(opcUaUrl);
    opcUa.connect();
    URI address = URI.create(modbusUrl);
    ModbusTCPMaster modbus = new ModbusTCPMaster(address.getHost(), address.getPort());
    modbus.connect();
    return new Clients(opcUa, modbus);
  }

  /** Reads a variable of the points' namespace. */
  public DataValue opcUa(String identifier) {
    try {
      int namespace =
          Objects.requireNonNull(opcUa.getNamespaceTable().getIndex(NodeList.NAMESPACE)).intValue();
      return opcUa.readValue(0, TimestampsToReturn.Both, new NodeId(namespace, identifier));
    } catch (UaException failed) {
      throw new IllegalStateException(identifier, failed);
    }
  }

  /** Reads the level of a block: float at 34, millimetres at 52, double at 78 (register list). */
  public ModbusLevel modbus(int block) {
    try {
      Register[] all = modbus.readMultipleRegisters(1, 100 * block, 100);
      return new ModbusLevel(
          Float.intBitsToFloat((int) bits(all, 34, 2)),
          (int) bits(all, 52, 2),
          Double.longBitsToDouble(bits(all, 78, 4)),
          all[76].getValue());
    } catch (ModbusException failed) {
      throw new IllegalStateException("block " + block, failed);
    }
  }

  private static long bits(Register[] registers, int from, int count) {
    long bits = 0;
    for (int i = from; i < from + count; i++) {
      bits = (bits << 16) | (registers[i].getValue() & 0xFFFF);
    }
    return bits;
  }

  @Override
  public void close() throws UaException {
    modbus.disconnect();
    opcUa.disconnect();
  }
}
