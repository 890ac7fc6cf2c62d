package io.strapline.bridge.publish.modbus;

import java.util.HexFormat;
import java.util.Locale;

/** Bytes as hexadecimal text. */
final class Bytes {

  private Bytes() {}

  /** Returns the bytes of a text such as {@code 03 00 6B}. */
  static byte[] of(String hex) {
    return HexFormat.of().parseHex(hex.replace(" ", "").toLowerCase(Locale.ROOT));
  }

  /** Returns a text such as {@code 03 00 6B}. */
  static String text(byte[] bytes) {
    return HexFormat.ofDelimiter(" ").withUpperCase().formatHex(bytes);
  }

  /** Returns a Modbus TCP frame around a PDU. */
  static byte[] frame(int transaction, int unit, byte[] pdu) {
    byte[] frame = new byte[7 + pdu.length];
    frame[0] = (byte) (transaction >> 8);
    frame[1] = (byte) transaction;
    frame[4] = (byte) ((pdu.length + 1) >> 8);
    frame[5] = (byte) (pdu.length + 1);
    frame[6] = (byte) unit;
    System.arraycopy(pdu, 0, frame, 7, pdu.length);
    return frame;
  }
}
