package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.modbus.Crc16;
import io.strapline.bridge.modbus.RtuLength;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Optional;

/**
 * Takes apart what was heard on a serial line between two silences, requests and the answers of
 * other units. Adapters that deliver in portions hide the silences between frames, so there may be
 * several. Stateless.
 */
final class HeardFrames {

  private static final int SHORTEST = 4;

  private HeardFrames() {}

  /**
   * Returns the request at the end, without its checksum: only that one can still wait for an
   * answer. Empty when the last frame is an answer, or when any byte belongs to no whole frame with
   * a right checksum.
   */
  static Optional<byte[]> waitingRequest(byte[] heard) {
    ByteBuffer bytes = ByteBuffer.wrap(heard);
    Optional<byte[]> last = Optional.empty();
    int at = 0;
    while (at < heard.length) {
      int request = requestAt(bytes, at);
      int length = request > 0 ? request : fitting(bytes, at, RtuLength.ofResponse(bytes, at));
      if (length == 0) {
        return Optional.empty();
      }
      last =
          request > 0
              ? Optional.of(Arrays.copyOfRange(heard, at, at + length - 2))
              : Optional.empty();
      at += length;
    }
    return last;
  }

  private static int requestAt(ByteBuffer bytes, int at) {
    int known = fitting(bytes, at, RtuLength.ofRequest(bytes, at));
    if (known > 0 || fitting(bytes, at, RtuLength.ofResponse(bytes, at)) > 0) {
      return known;
    }
    // A function or a length that is not known: one frame up to the silence.
    return fitting(bytes, at, bytes.limit() - at);
  }

  /** Returns the length when a frame of this length is there and its checksum right, else 0. */
  private static int fitting(ByteBuffer bytes, int at, int length) {
    boolean there = length >= SHORTEST && length <= Math.min(RtuLength.MAX, bytes.limit() - at);
    return there && Crc16.isRight(bytes, at, length) ? length : 0;
  }
}
