package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;
import java.util.Set;

/**
 * Frames of Modbus TCP: transaction (2 bytes), protocol (2, always 0), length of what follows (2),
 * unit (1), PDU (1 to 253). Units that are not served get exception 0B. Immutable.
 */
final class TcpFraming implements Framing {

  private static final int LENGTH_END = 6;
  private static final int MIN_LENGTH = 2;
  private static final int MAX_LENGTH = 254;

  private final Set<Integer> unitIds;
  private final Answers answers;

  /**
   * Makes the framing of a server.
   *
   * @param unitIds unit identifiers that are answered beside 0 and 255
   * @param answers answers PDUs
   */
  TcpFraming(Set<Integer> unitIds, Answers answers) {
    this.unitIds = Set.copyOf(unitIds);
    this.answers = answers;
  }

  @Override
  public Frame look(ByteBuffer in) {
    int start = in.position();
    int there = in.remaining();
    if ((there >= 3 && in.get(start + 2) != 0) || (there >= 4 && in.get(start + 3) != 0)) {
      return Frame.BROKEN;
    }
    if (there < LENGTH_END) {
      return Frame.PARTIAL;
    }
    int length = in.getShort(start + 4) & 0xFFFF;
    if (length < MIN_LENGTH || length > MAX_LENGTH) {
      return Frame.BROKEN;
    }
    return there < LENGTH_END + length ? Frame.PARTIAL : Frame.WHOLE;
  }

  @Override
  public boolean answer(ByteBuffer in, ByteBuffer out, Peer peer) {
    ByteBuffer frame = take(in);
    int start = out.position();
    out.putShort(frame.getShort()).putInt(0);
    frame.position(LENGTH_END);
    int unit = frame.get() & 0xFF;
    out.put((byte) unit);
    if (!putPdu(unit, frame, out, peer)) {
      out.position(start);
      return false;
    }
    out.putShort(start + 4, (short) (out.position() - start - LENGTH_END));
    return true;
  }

  private static ByteBuffer take(ByteBuffer in) {
    int size = LENGTH_END + (in.getShort(in.position() + 4) & 0xFFFF);
    ByteBuffer frame = in.slice(in.position(), size);
    in.position(in.position() + size);
    return frame;
  }

  private boolean putPdu(int unit, ByteBuffer pdu, ByteBuffer out, Peer peer) {
    int code = pdu.get(pdu.position()) & 0xFF;
    if (!isServed(unit)) {
      Answers.refuse(code, ExceptionCode.GATEWAY_TARGET_DEVICE_FAILED_TO_RESPOND, out);
      return true;
    }
    Function function = Answers.served(code, peer);
    if (function != null && pdu.remaining() <= function.leastBytes()) {
      // Shorter than its function needs: the length of the header cannot have been right.
      return false;
    }
    try {
      answers.put(pdu, out, peer);
      return true;
    } catch (GoneException gone) {
      return false;
    }
  }

  private boolean isServed(int unit) {
    return unit == 0 || unit == 255 || unitIds.contains(unit);
  }
}
