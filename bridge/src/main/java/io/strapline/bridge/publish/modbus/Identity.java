package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.NavigableMap;
import java.util.TreeMap;

/**
 * Read device identification, function 2B with MEI type 0E, section 6.21: basic, regular and
 * extended objects, as a stream and one by one. Immutable.
 */
final class Identity {

  private static final int MEI_TYPE = 0x0E;
  private static final int INDIVIDUAL = 4;
  private static final int FIRST_REGULAR = 0x03;
  private static final int FIRST_EXTENDED = 0x80;
  private static final int END = 0x100;

  /** Extended objects are there, and single objects can be read. */
  private static final int CONFORMITY = 0x83;

  /** Function, MEI type, code, conformity, more follows, next object, number of objects. */
  private static final int HEAD_BYTES = 7;

  private static final int MAX_PDU = 253;

  /** So that any one object fits a PDU. */
  private static final int LONGEST = 200;

  private final NavigableMap<Integer, byte[]> objects = new TreeMap<>();

  /**
   * Takes what the objects tell.
   *
   * @param version of the program
   * @param plant name of the plant
   * @param wordOrder as configured
   */
  Identity(String version, String plant, String wordOrder) {
    add(0x00, "Strapline");
    add(0x01, "strapline-bridge");
    add(0x02, version);
    add(0x04, "Strapline bridge");
    add(0x05, "register map " + PointBlock.MAP_VERSION);
    add(0x06, plant);
    add(0x80, "word order " + wordOrder);
  }

  private void add(int id, String text) {
    byte[] ascii = text.getBytes(StandardCharsets.US_ASCII);
    objects.put(id, java.util.Arrays.copyOf(ascii, Math.min(LONGEST, ascii.length)));
  }

  /** Answers what follows the function code. */
  void read(ByteBuffer body, ByteBuffer out) throws Refusal {
    int type = body.get() & 0xFF;
    // Figure of section 6.21: a MEI type that is not served is an illegal function.
    Refusal.unless(type == MEI_TYPE, ExceptionCode.ILLEGAL_FUNCTION);
    Refusal.unlessBuilt(body.remaining() == 2);
    int code = body.get() & 0xFF;
    int object = body.get() & 0xFF;
    Refusal.unlessBuilt(code >= 1 && code <= INDIVIDUAL);
    out.put((byte) MEI_TYPE).put((byte) code).put((byte) CONFORMITY);
    if (code == INDIVIDUAL) {
      one(object, out);
    } else {
      stream(objects.headMap(end(code), false), object, out);
    }
  }

  private static int end(int code) {
    return code == 1 ? FIRST_REGULAR : code == 2 ? FIRST_EXTENDED : END;
  }

  private void one(int object, ByteBuffer out) throws Refusal {
    byte[] value = objects.get(object);
    Refusal.unlessThere(value != null);
    out.put((byte) 0).put((byte) 0).put((byte) 1);
    if (value != null) {
      put(object, value, out);
    }
  }

  // An object that is not there begins the stream anew from object 0 (section 6.21).
  private static void stream(NavigableMap<Integer, byte[]> all, int from, ByteBuffer out) {
    int first = all.containsKey(from) ? from : 0;
    int head = out.position();
    out.put((byte) 0).put((byte) 0).put((byte) 0);
    int room = MAX_PDU - HEAD_BYTES;
    int count = 0;
    for (var entry : all.tailMap(first, true).entrySet()) {
      room -= 2 + entry.getValue().length;
      if (room < 0) {
        out.put(head, (byte) 0xFF).put(head + 1, entry.getKey().byteValue());
        break;
      }
      put(entry.getKey(), entry.getValue(), out);
      count++;
    }
    out.put(head + 2, (byte) count);
  }

  private static void put(int object, byte[] value, ByteBuffer out) {
    out.put((byte) object).put((byte) value.length).put(value);
  }
}
