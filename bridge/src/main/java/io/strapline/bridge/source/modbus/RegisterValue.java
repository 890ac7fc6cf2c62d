package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.SourceSettings.ModbusRegister;
import io.strapline.bridge.config.SourceSettings.RegisterType;
import java.nio.ByteBuffer;

/** Turns registers into numbers. Stateless. */
final class RegisterValue {

  private RegisterValue() {}

  /** Returns how many registers a type fills. */
  static int width(RegisterType type) {
    return switch (type) {
      case INT16, UINT16 -> 1;
      case INT32, UINT32, FLOAT32 -> 2;
    };
  }

  /**
   * Returns a value in metres, mA or counts; a float register that holds no number gives NaN, which
   * the measuring point judges.
   *
   * @param bytes registers of one read, high byte first
   * @param firstAddress address of the first of them
   * @param register which and how
   */
  static double decode(byte[] bytes, int firstAddress, ModbusRegister register) {
    byte[] own = new byte[2 * width(register.type())];
    System.arraycopy(bytes, 2 * (register.address() - firstAddress), own, 0, own.length);
    // A single register always carries its high byte first.
    byte[] ordered = own.length == 2 ? own : register.order().arrange(own);
    return number(ByteBuffer.wrap(ordered), register.type()) * register.toSi();
  }

  private static double number(ByteBuffer value, RegisterType type) {
    return switch (type) {
      case INT16 -> value.getShort();
      case UINT16 -> value.getShort() & 0xFFFF;
      case INT32 -> value.getInt();
      case UINT32 -> value.getInt() & 0xFFFF_FFFFL;
      case FLOAT32 -> value.getFloat();
    };
  }
}
