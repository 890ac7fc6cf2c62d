package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.AddressRange;
import io.strapline.bridge.config.ModbusAccess;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;

/** Servers of plain images and memories, with and without sockets. */
final class TestServer {

  static final Identity IDENTITY = new Identity("1.2.3", "Kestrel Quay", "ABCD");

  private TestServer() {}

  /** Answers of a server whose registers nobody can write. */
  static Answers answers(Supplier<RegisterImage> image) {
    return new Answers(image, new TestMemory(0, -1), IDENTITY);
  }

  static Answers answers(TestMemory memory) {
    return new Answers(memory, memory, IDENTITY);
  }

  static Framing tcp(Answers answers) {
    return new TcpFraming(Set.of(1, 17), answers);
  }

  static Service service(Supplier<RegisterImage> image, ListenerLimits limits) {
    return new Service(tcp(answers(image)), ModbusAccess.READ_ONLY, limits);
  }

  /** Everyone reads, this machine writes. */
  static ModbusAccess loopbackWrites() {
    return access(List.of(), Set.of("LT-101"), Set.of("LT-101"));
  }

  static ModbusAccess access(
      List<AddressRange> clients, Set<String> acknowledge, Set<String> reset) {
    List<AddressRange> from = List.of(new AddressRange(InetAddress.getLoopbackAddress(), 32));
    return new ModbusAccess(
        clients, Optional.of(new ModbusAccess.Writes(from, acknowledge, reset)));
  }

  /** Returns the answer to one PDU. */
  static byte[] pdu(Answers answers, Peer peer, byte... request) throws GoneException {
    ByteBuffer out = ByteBuffer.allocate(Framing.MAX_FRAME);
    answers.put(ByteBuffer.wrap(request), out, peer);
    return Arrays.copyOf(out.array(), out.position());
  }

  static String pdu(Answers answers, Peer peer, String request) throws GoneException {
    return Bytes.text(pdu(answers, peer, Bytes.of(request)));
  }

  /** Returns the answer to one whole frame. */
  static byte[] frame(Framing framing, Peer peer, byte... request) {
    ByteBuffer in = ByteBuffer.wrap(request);
    ByteBuffer out = ByteBuffer.allocate(Framing.MAX_FRAME);
    assertEquals(Framing.Frame.WHOLE, framing.look(in), () -> Bytes.text(request));
    assertTrue(framing.answer(in, out, peer), () -> Bytes.text(request));
    assertEquals(0, in.remaining());
    return Arrays.copyOf(out.array(), out.position());
  }
}
