package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;

/** How requests lie in a stream of bytes, and answers in the one that goes back. */
interface Framing {

  /** Room that one answer may need. */
  int MAX_FRAME = 260;

  /** What the received bytes hold. */
  enum Frame {
    /** At least one whole frame. */
    WHOLE,
    /** The beginning of a frame, or nothing. */
    PARTIAL,
    /** Something that is no Modbus. */
    BROKEN
  }

  /** Judges the bytes between position and limit as early as they allow it. */
  Frame look(ByteBuffer in);

  /**
   * Takes the next whole frame out of {@code in} and answers it; {@link #look} has said that there
   * is one.
   *
   * @param out has room for {@link #MAX_FRAME} bytes
   * @return false when the stream cannot be trusted any more, or the peer has gone: nothing was
   *     answered
   */
  boolean answer(ByteBuffer in, ByteBuffer out, Peer peer);
}
