package io.strapline.bridge.publish.modbus;

import java.nio.ByteBuffer;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Answers requests, whatever line they came over: functions 01 to 04 and 2B/0E for everyone, 05,
 * 06, 0F, 10, 16 and 17 for peers that may write. Every other function gets exception 01, and so
 * does a write by a peer that may not (from memory: the code for a missing authority).
 *
 * <p>Order of checks, as the protocol's figures for each function have it: function (01), quantity,
 * byte count and length (03), address (02), execution (04).
 */
final class Answers {

  private static final Logger LOG = LoggerFactory.getLogger(Answers.class);

  private final ReadFunctions reads;
  private final WriteFunctions writes;
  private final Identity identity;
  private boolean failing;

  /**
   * Makes the answers of a server.
   *
   * @param image gives the image to read; asked once for each request
   * @param commands executes writes
   * @param identity tells what the server is
   */
  Answers(Supplier<RegisterImage> image, Writable commands, Identity identity) {
    reads = new ReadFunctions(image);
    writes = new WriteFunctions(commands, reads);
    this.identity = identity;
  }

  /** Returns the function that a peer may ask by this code; null when there is none. */
  static @Nullable Function served(int code, Peer peer) {
    Function function = Function.of(code);
    return function == null || (function.writes() && !peer.mayWrite()) ? null : function;
  }

  /** Answers with an exception. */
  static void refuse(int code, ExceptionCode reason, ByteBuffer out) {
    out.put((byte) (code | 0x80)).put(reason.code());
  }

  /**
   * Answers a PDU.
   *
   * @param pdu from the function code to the end
   * @param out takes the PDU of the answer, up to 253 bytes
   * @throws GoneException when the peer has gone before its command was executed; nothing is
   *     written then
   */
  synchronized void put(ByteBuffer pdu, ByteBuffer out, Peer peer) throws GoneException {
    int start = out.position();
    int code = pdu.get() & 0xFF;
    try {
      out.put((byte) code);
      execute(served(code, peer), pdu, out, peer);
      failing = false;
    } catch (Refusal refused) {
      out.position(start);
      refuse(code, refused.code(), out);
    } catch (GoneException gone) {
      out.position(start);
      throw gone;
    } catch (Throwable failure) {
      // Whatever goes wrong in one request, an Error too, must not stop the server.
      out.position(start);
      refuse(code, ExceptionCode.SERVER_DEVICE_FAILURE, out);
      logOnce(failure);
    }
  }

  private void execute(@Nullable Function function, ByteBuffer body, ByteBuffer out, Peer peer)
      throws Refusal, GoneException {
    if (function == null) {
      throw new Refusal(ExceptionCode.ILLEGAL_FUNCTION);
    }
    Refusal.unlessBuilt(body.remaining() >= function.leastBytes());
    switch (function) {
      case READ_COILS, READ_DISCRETE_INPUTS -> reads.bits(body, out);
      case READ_HOLDING_REGISTERS, READ_INPUT_REGISTERS -> reads.registers(body, out);
      case WRITE_SINGLE_COIL -> writes.singleCoil(body, out, peer);
      case WRITE_SINGLE_REGISTER -> writes.singleRegister(body, out, peer);
      case WRITE_MULTIPLE_COILS -> writes.coils(body, out, peer);
      case WRITE_MULTIPLE_REGISTERS -> writes.registers(body, out, peer);
      case MASK_WRITE_REGISTER -> writes.mask(body, out, peer);
      case READ_WRITE_REGISTERS -> writes.readWrite(body, out, peer);
      case ENCAPSULATED -> identity.read(body, out);
    }
  }

  private void logOnce(Throwable failure) {
    if (!failing) {
      LOG.error("a Modbus request failed inside and was answered with exception 04", failure);
    }
    failing = true;
  }
}
