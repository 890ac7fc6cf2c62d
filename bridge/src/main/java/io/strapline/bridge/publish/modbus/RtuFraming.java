package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.modbus.Crc16;
import io.strapline.bridge.modbus.RtuLength;
import java.nio.ByteBuffer;
import java.util.Set;

/**
 * Serial frames in a TCP stream: unit (1 byte), PDU, checksum (2). Without silences between frames
 * a stream that does not fit can never be trusted again, so any wrong checksum ends it. Unit 0 is a
 * broadcast: executed and not answered. Immutable.
 */
final class RtuFraming implements Framing {

  private static final int SHORTEST = 4;

  private final Set<Integer> unitIds;
  private final Answers answers;

  /**
   * Makes the framing of a server.
   *
   * @param unitIds unit identifiers that are answered beside 255
   * @param answers answers PDUs
   */
  RtuFraming(Set<Integer> unitIds, Answers answers) {
    this.unitIds = Set.copyOf(unitIds);
    this.answers = answers;
  }

  @Override
  public Frame look(ByteBuffer in) {
    int length = RtuLength.ofRequest(in, in.position());
    int there = in.remaining();
    if (length == RtuLength.UNKNOWN) {
      return lookAtUnknown(in, there);
    }
    if (length > RtuLength.MAX) {
      return Frame.BROKEN;
    }
    if (length == RtuLength.MORE || there < length) {
      return Frame.PARTIAL;
    }
    return Crc16.isRight(in, in.position(), length) ? Frame.WHOLE : Frame.BROKEN;
  }

  // The length of an unknown function cannot be told: it ends where the checksum fits.
  private static Frame lookAtUnknown(ByteBuffer in, int there) {
    if (there >= SHORTEST && there <= RtuLength.MAX && Crc16.isRight(in, in.position(), there)) {
      return Frame.WHOLE;
    }
    return there >= RtuLength.MAX ? Frame.BROKEN : Frame.PARTIAL;
  }

  @Override
  public boolean answer(ByteBuffer in, ByteBuffer out, Peer peer) {
    int known = RtuLength.ofRequest(in, in.position());
    int length = known == RtuLength.UNKNOWN ? in.remaining() : known;
    ByteBuffer frame = in.slice(in.position(), length - 2);
    in.position(in.position() + length);
    return answerFrame(frame, out, peer);
  }

  /** Answers a frame whose checksum was right and is left out. */
  private boolean answerFrame(ByteBuffer frame, ByteBuffer out, Peer peer) {
    int start = out.position();
    int unit = frame.get() & 0xFF;
    int code = frame.get(1) & 0xFF;
    out.put((byte) unit);
    try {
      if (unit == 0 || unit == 255 || unitIds.contains(unit)) {
        answers.put(frame, out, peer);
      } else {
        Answers.refuse(code, ExceptionCode.GATEWAY_TARGET_DEVICE_FAILED_TO_RESPOND, out);
      }
    } catch (GoneException gone) {
      out.position(start);
      return false;
    }
    if (unit == 0) {
      out.position(start);
    } else {
      Crc16.append(out, start);
    }
    return true;
  }
}
