package io.strapline.bridge.publish.modbus;

import java.util.Arrays;

/**
 * Knows the server's own answers when a two-wire adapter hears what it sends. That matters where an
 * answer has the bytes of its request (functions 05, 06 and 16): taken for a request it would be
 * executed and answered again, for ever. Used by one thread.
 */
final class Echo {

  private byte[] sent = {};
  private boolean sameAsRequest;
  private boolean awaited;

  /** Whether the line has shown that it does not echo, by an answer that is no request. */
  private boolean absent;

  /** Notes an answer that goes out. */
  void sends(byte[] answer, byte[] request) {
    sent = answer;
    sameAsRequest = Arrays.equals(answer, request);
    awaited = true;
  }

  /** Returns what was heard without the echo of the last answer in front of it. */
  byte[] without(byte[] heard) {
    if (!awaited || heard.length == 0) {
      return heard;
    }
    awaited = false;
    boolean same =
        heard.length >= sent.length && Arrays.equals(heard, 0, sent.length, sent, 0, sent.length);
    if (!sameAsRequest) {
      absent = !same;
    }
    // Before anything is known a repeated request counts as echo: its master will ask once more.
    return same && !absent ? Arrays.copyOfRange(heard, sent.length, heard.length) : heard;
  }
}
