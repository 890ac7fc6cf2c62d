package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;

/**
 * Frames of Modbus TCP: transaction (2 bytes), protocol (2, always 0), length of what follows (2),
 * unit (1), PDU (1 to 253). Stateless.
 */
final class Mbap {

  private static final int LENGTH_END = 6;
  private static final int MIN_LENGTH = 2;
  private static final int MAX_LENGTH = 254;

  private Mbap() {}

  /** What the received bytes hold. */
  enum Frame {
    /** At least one whole frame. */
    WHOLE,
    /** The beginning of a frame, or nothing. */
    PARTIAL,
    /** Something that is no Modbus TCP. */
    BROKEN
  }

  /** Judges the bytes between position and limit as early as they allow it. */
  static Frame look(ByteBuffer in) {
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

  /** Takes the next whole frame out of {@code in}; {@link #look} has said that there is one. */
  static ByteBuffer take(ByteBuffer in) {
    int size = LENGTH_END + (in.getShort(in.position() + 4) & 0xFFFF);
    ByteBuffer frame = in.slice(in.position(), size);
    in.position(in.position() + size);
    return frame;
  }
}
