package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.Eventually;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.channels.ServerSocketChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/**
 * Mutated frames and broken connections, while a good client polls beside them: every one of its
 * polls is answered rightly, and nothing is left behind. The writable memory is watched as well.
 */
@Timeout(300)
class AbuseIT {

  private static final long SEED = 20261125;
  private static final int MUTATIONS = 200_000;
  private static final int CUT_CONNECTIONS = 2000;
  private static final int FRAMES_A_CONNECTION = 500;

  /** As many as a client may have outstanding (modbus_limits.csv). */
  private static final int PIPELINED = 16;

  private static final Duration LONG = Duration.ofMinutes(10);

  private final TestMemory memory = new TestMemory(1000, -1);
  private final byte[] readOnly = constant();

  /** Requests that are right, each function once. */
  private static final List<String> SEEDS =
      List.of(
          "01 00 13 00 13",
          "02 00 C4 00 16",
          "03 00 6B 00 03",
          "04 00 08 00 01",
          "05 00 AC FF 00",
          "06 00 01 00 03",
          "0F 00 13 00 0A 02 CD 01",
          "10 00 01 00 02 04 00 0A 01 02",
          "16 00 04 00 F2 00 25",
          "17 00 03 00 06 00 0E 00 03 06 00 FF 00 FF 00 FF",
          "2B 0E 01 00");

  private static byte[] constant() {
    ByteBuffer words = ByteBuffer.allocate(2000);
    for (int i = 0; i < 1000; i++) {
      words.putShort((short) (7 * i));
    }
    return words.array();
  }

  /** Reads come from a constant image, so every right answer is known; writes go elsewhere. */
  private ModbusListener listener() throws IOException {
    RegisterImage image =
        RegisterImage.of(new AddressSpace().map(0, 1000), readOnly, new byte[125]);
    Answers answers = new Answers(() -> image, memory, TestServer.IDENTITY);
    ListenerLimits limits = new ListenerLimits(64, 64, LONG, Duration.ofSeconds(2), LONG);
    Service service = new Service(TestServer.tcp(answers), TestServer.loopbackWrites(), limits);
    return ModbusListener.start("127.0.0.1", 0, service, ServerSocketChannel::accept);
  }

  /**
   * A client that polls until it is told to stop; returns how many polls were answered rightly. It
   * is let in before this returns: afterwards the abuse may fill the server, which then refuses
   * whoever comes, good or not.
   */
  private static FutureTask<Integer> goodClient(int port, AtomicBoolean stop) throws IOException {
    RawClient connected = new RawClient(port);
    connected.registers(0, 1);
    FutureTask<Integer> polling =
        new FutureTask<>(
            () -> {
              int polls = 0;
              try (RawClient client = connected) {
                for (; !stop.get() && polls < 50_000_000; polls++) {
                  int address = polls % 875;
                  int[] read = client.registers(address, 125);
                  for (int i = 0; i < read.length; i++) {
                    assertEquals(7 * (address + i), read[i], "poll " + polls);
                  }
                }
              }
              return polls;
            });
    Thread thread = new Thread(polling, "good-client");
    thread.setDaemon(true);
    thread.start();
    return polling;
  }

  @Test
  void mutatedFramesNeverDisturbAGoodClient() throws Exception {
    AtomicBoolean stop = new AtomicBoolean();
    try (ModbusListener listener = listener()) {
      int threads = threads();
      long descriptors = descriptors();
      FutureTask<Integer> good = goodClient(listener.port(), stop);
      Random random = new Random(SEED);
      int sent = 0;
      while (sent < MUTATIONS) {
        sent += mutated(listener.port(), random, Math.min(FRAMES_A_CONNECTION, MUTATIONS - sent));
      }
      stop.set(true);
      assertTrue(good.get(60, TimeUnit.SECONDS) > 100, "polls beside " + sent + " mutations");
      assertEquals(MUTATIONS, sent);
      assertNothingIsLeft(listener, threads, descriptors);
    }
  }

  /** Sends mutated frames over one connection, each answered, then one that breaks the stream. */
  private static int mutated(int port, Random random, int most) throws IOException {
    try (RawClient client = new RawClient(port)) {
      for (int done = 0; done < most; done += PIPELINED) {
        exchange(client, random, Math.min(PIPELINED, most - done));
      }
      client.send(breaking(random));
      client.socket().shutdownOutput();
      checkAnswers(client.socket());
    } catch (java.net.SocketException reset) {
      // Only the frame that breaks the stream may end it.
      assertTrue(reset.toString().contains("reset"), reset.toString());
    }
    return most;
  }

  /** Sends some frames at once and wants one fitting answer for each. */
  private static void exchange(RawClient client, Random random, int count) throws IOException {
    List<byte[]> sent = new ArrayList<>();
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (int i = 0; i < count; i++) {
      byte[] frame = mutation(random);
      sent.add(frame);
      all.write(frame);
    }
    client.send(all.toByteArray());
    for (byte[] frame : sent) {
      byte[] answer = client.receive();
      String what = "seed " + SEED + ", " + Bytes.text(frame) + " got " + Bytes.text(answer);
      assertTrue(answer[0] == frame[0] && answer[1] == frame[1] && answer[6] == frame[6], what);
      assertEquals(frame[7] & 0x7F, answer[7] & 0x7F, what);
      assertTrue(answer.length <= Framing.MAX_FRAME && (answer[8] != 4 || answer.length > 9), what);
    }
  }

  /** A frame whose PDU is wrong in some bits, or has spare bytes; its header is right. */
  private static byte[] mutation(Random random) {
    byte[] pdu = Bytes.of(SEEDS.get(random.nextInt(SEEDS.size())));
    if (random.nextInt(8) == 0) {
      pdu = Arrays.copyOf(pdu, pdu.length + 1 + random.nextInt(8));
    }
    for (int i = random.nextInt(3); i >= 0; i--) {
      // The function stays in most, or the rest would never be looked at.
      int at = random.nextInt(10) == 0 ? 0 : 1 + random.nextInt(pdu.length - 1);
      pdu[at] ^= (byte) (1 << random.nextInt(8));
    }
    // A function that needs more than is there would end the stream here already.
    byte[] room = Arrays.copyOf(pdu, Math.max(pdu.length, 10));
    return Bytes.frame(random.nextInt(65_536), 1, pdu[0] == 0x17 ? room : padded(pdu));
  }

  private static byte[] padded(byte[] pdu) {
    Function function = Function.of(pdu[0] & 0xFF);
    int least = function == null ? 1 : 1 + function.leastBytes();
    return pdu.length < least ? Arrays.copyOf(pdu, least) : pdu;
  }

  /** A frame with a wrong header or an end that is missing. */
  private static byte[] breaking(Random random) {
    byte[] frame = Bytes.frame(1, 1, Bytes.of(SEEDS.get(random.nextInt(SEEDS.size()))));
    if (random.nextBoolean()) {
      return Arrays.copyOf(frame, 1 + random.nextInt(frame.length));
    }
    frame[random.nextInt(7)] = (byte) random.nextInt(256);
    return frame;
  }

  // Whatever was sent, what comes back is whole frames, none too long.
  private static void checkAnswers(Socket socket) throws IOException {
    InputStream in = socket.getInputStream();
    byte[] head = in.readNBytes(7);
    while (head.length == 7) {
      int length = (head[4] & 0xFF) << 8 | (head[5] & 0xFF);
      assertTrue(head[2] == 0 && head[3] == 0 && length >= 3 && length <= 254, Bytes.text(head));
      assertEquals(length - 1, in.readNBytes(length - 1).length);
      head = in.readNBytes(7);
    }
    assertEquals(0, head.length, () -> "half an answer, seed " + SEED);
  }

  @Test
  void cutConnectionsNeverDisturbAGoodClient() throws Exception {
    AtomicBoolean stop = new AtomicBoolean();
    try (ModbusListener listener = listener()) {
      int threads = threads();
      long descriptors = descriptors();
      FutureTask<Integer> good = goodClient(listener.port(), stop);
      Random random = new Random(SEED);
      int refused = 0;
      for (int i = 0; i < CUT_CONNECTIONS; i++) {
        refused += cut(listener.port(), random) ? 0 : 1;
      }
      stop.set(true);
      assertTrue(good.get(60, TimeUnit.SECONDS) > 100);
      assertTrue(refused < CUT_CONNECTIONS / 2, refused + " of " + CUT_CONNECTIONS + " refused");
      assertNothingIsLeft(listener, threads, descriptors);
      assertEquals(List.of(), memory.writes());
    }
  }

  /** Sends a part of a frame and leaves, with an end or with a reset. */
  private static boolean cut(int port, Random random) {
    try (RawClient client = new RawClient(port)) {
      byte[] frame = Bytes.frame(1, 1, Bytes.of(SEEDS.get(random.nextInt(SEEDS.size()))));
      client.socket().setSoLinger(random.nextBoolean(), 0);
      client.send(Arrays.copyOf(frame, random.nextInt(frame.length)));
      return true;
    } catch (IOException full) {
      return false;
    }
  }

  private static void assertNothingIsLeft(ModbusListener listener, int threads, long descriptors)
      throws IOException {
    Eventually.holds("all clients gone", () -> listener.clients() == 0);
    Eventually.holds("threads back", () -> threads() <= threads);
    long now = descriptors();
    assertTrue(now <= descriptors + 2, () -> descriptors + " descriptors before, now " + now);
    try (RawClient client = new RawClient(listener.port())) {
      assertEquals(70, client.registers(10, 1)[0]);
    }
  }

  private static int threads() {
    return Thread.activeCount();
  }

  /** Returns how many descriptors this process has open; 0 where the system does not tell. */
  private static long descriptors() throws IOException {
    Path folder = Path.of("/proc/self/fd");
    if (!Files.isDirectory(folder)) {
      return 0;
    }
    try (Stream<Path> open = Files.list(folder)) {
      return open.count();
    }
  }
}
