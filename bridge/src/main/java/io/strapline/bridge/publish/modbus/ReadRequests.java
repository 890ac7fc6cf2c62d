package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;
import java.util.Set;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Answers Modbus TCP requests from an image: functions 01 to 04. Every other function, writes
 * included, is refused with exception 01, since nothing is writable.
 *
 * <p>Order of checks: unit (0B), function (01), length and quantity (03), address (02). The
 * protocol's figure 9 has address before quantity, its figures for each function the other way
 * round; this server takes the quantity first.
 */
final class ReadRequests {

  /** Largest frame: header of 7 bytes and a PDU of 253. */
  static final int MAX_FRAME = 260;

  private static final Logger LOG = LoggerFactory.getLogger(ReadRequests.class);
  private static final int MAX_BITS = 2000;
  private static final int MAX_REGISTERS = 125;
  private static final int LENGTH_BEHIND_FUNCTION = 4;

  private final Set<Integer> unitIds;
  private final Supplier<RegisterImage> image;
  private boolean failing;

  /**
   * Makes the answers of a server.
   *
   * @param unitIds unit identifiers that are answered beside 0 and 255
   * @param image gives the image to read; asked once for each request
   */
  ReadRequests(Set<Integer> unitIds, Supplier<RegisterImage> image) {
    this.unitIds = Set.copyOf(unitIds);
    this.image = image;
  }

  /**
   * Answers one whole frame.
   *
   * @param frame from the transaction identifier to the end of the PDU
   * @param out has room for {@link #MAX_FRAME} bytes
   * @return false when the frame is shorter than its function needs: nothing was answered and the
   *     stream cannot be trusted any more
   */
  boolean answer(ByteBuffer frame, ByteBuffer out) {
    int start = out.position();
    out.putShort(frame.getShort()).putInt(0);
    frame.position(frame.position() + 4);
    int unit = frame.get() & 0xFF;
    int function = frame.get() & 0xFF;
    out.put((byte) unit);
    if (isRead(function) && isServed(unit) && frame.remaining() < LENGTH_BEHIND_FUNCTION) {
      out.position(start);
      return false;
    }
    putPdu(unit, function, frame, out);
    out.putShort(start + 4, (short) (out.position() - start - 6));
    return true;
  }

  private void putPdu(int unit, int function, ByteBuffer body, ByteBuffer out) {
    int start = out.position();
    try {
      execute(unit, function, body, out);
      failing = false;
    } catch (Throwable failure) {
      // Whatever goes wrong in one request, an Error too, must not stop the server.
      out.position(start);
      refuse(function, ExceptionCode.SERVER_DEVICE_FAILURE, out);
      logOnce(failure);
    }
  }

  private void execute(int unit, int function, ByteBuffer body, ByteBuffer out) {
    if (!isServed(unit)) {
      refuse(function, ExceptionCode.GATEWAY_TARGET_FAILED, out);
    } else if (!isRead(function)) {
      refuse(function, ExceptionCode.ILLEGAL_FUNCTION, out);
    } else if (body.remaining() != LENGTH_BEHIND_FUNCTION) {
      refuse(function, ExceptionCode.ILLEGAL_DATA_VALUE, out);
    } else {
      read(function, body.getShort() & 0xFFFF, body.getShort() & 0xFFFF, out);
    }
  }

  private void read(int function, int address, int quantity, ByteBuffer out) {
    boolean bits = function <= 2;
    if (quantity < 1 || quantity > (bits ? MAX_BITS : MAX_REGISTERS)) {
      refuse(function, ExceptionCode.ILLEGAL_DATA_VALUE, out);
    } else if (bits) {
      readBits(function, address, quantity, out);
    } else {
      readRegisters(function, address, quantity, out);
    }
  }

  private void readBits(int function, int address, int quantity, ByteBuffer out) {
    RegisterImage now = image.get();
    if (now.bitsReadable(address, quantity)) {
      out.put((byte) function).put((byte) ((quantity + 7) / 8));
      now.putBits(address, quantity, out);
    } else {
      refuse(function, ExceptionCode.ILLEGAL_DATA_ADDRESS, out);
    }
  }

  private void readRegisters(int function, int address, int quantity, ByteBuffer out) {
    RegisterImage now = image.get();
    if (now.registersReadable(address, quantity)) {
      out.put((byte) function).put((byte) (2 * quantity));
      now.putRegisters(address, quantity, out);
    } else {
      refuse(function, ExceptionCode.ILLEGAL_DATA_ADDRESS, out);
    }
  }

  private boolean isServed(int unit) {
    return unit == 0 || unit == 255 || unitIds.contains(unit);
  }

  private static boolean isRead(int function) {
    return function >= 1 && function <= 4;
  }

  private static void refuse(int function, ExceptionCode code, ByteBuffer out) {
    out.put((byte) (function | 0x80)).put(code.code());
  }

  private void logOnce(Throwable failure) {
    if (!failing) {
      LOG.error("a Modbus request failed inside and was answered with exception 04", failure);
    }
    failing = true;
  }
}
