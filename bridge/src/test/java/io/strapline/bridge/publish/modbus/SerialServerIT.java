package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusLines;
import io.strapline.bridge.config.SerialLine;
import io.strapline.bridge.config.SerialLine.Parity;
import io.strapline.bridge.modbus.SerialPortWire;
import io.strapline.bridge.testing.Peers;
import io.strapline.bridge.testing.PseudoLine;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A real serial port's code on a pseudo-terminal, with a master of another make. */
@Timeout(120)
class SerialServerIT {

  private static final long SEED = 20261125;

  private final TestMemory memory = new TestMemory(1000, -1);

  private final List<SerialServer> open = new ArrayList<>();

  @AfterEach
  void closeAll() {
    open.forEach(SerialServer::close);
  }

  SerialServerIT() {
    memory.set(10, 0x4145);
    memory.set(11, 0x851F);
  }

  // A pseudo-terminal drops parity: 8N1.
  private static SerialLine line(String port) {
    return new SerialLine(port, 9600, Parity.NONE, 1, OptionalDouble.empty());
  }

  private void server(String port, boolean writes) throws IOException {
    SerialServer server =
        new SerialServer(
            new ModbusLines.Served(line(port), 17, writes),
            TestServer.answers(memory),
            SerialPortWire::open);
    open.add(server);
    server.start();
  }

  @Test
  void mbpollReadsAndWritesOverTheLine() throws Exception {
    Peers.require("mbpoll", "sh", "-c", "command -v mbpoll");
    try (PseudoLine pair = PseudoLine.open()) {
      server(pair.one(), true);
      assertTrue(mbpoll(pair.two(), 17, "-t", "4:float", "-B", "-r", "10").contains("12.345"));
      assertTrue(mbpoll(pair.two(), 17, "-t", "4", "-r", "0", "-c", "125").contains("[124]"));
      String written = mbpoll(pair.two(), 17, "-t", "4", "-r", "20", pair.two(), "77");
      assertTrue(written.contains("Written 1"), written);
      assertEquals(77, memory.register(20));
      assertTrue(
          mbpoll(pair.two(), 17, "-t", "4", "-r", "999", "-c", "2")
              .contains("Illegal data address"));
      // Another unit is not answered.
      assertTrue(mbpoll(pair.two(), 18, "-t", "4", "-r", "0", "-o", "0.3").contains("timed out"));
      assertTrue(mbpoll(pair.two(), 17, "-t", "4:float", "-B", "-r", "10").contains("12.345"));
    }
  }

  @Test
  void noiseAndOversizeFramesLeaveTheNextPollAnswered() throws Exception {
    Peers.require("mbpoll", "sh", "-c", "command -v mbpoll");
    Random random = new Random(SEED);
    try (PseudoLine pair = PseudoLine.open()) {
      server(pair.one(), true);
      for (int round = 0; round < 5; round++) {
        byte[] noise = new byte[1 + random.nextInt(600)];
        random.nextBytes(noise);
        try (RandomAccessFile line = new RandomAccessFile(pair.two(), "rw")) {
          line.write(noise);
        }
        String read = mbpoll(pair.two(), 17, "-t", "4:float", "-B", "-r", "10", "-o", "5");
        // The first poll may be part of the noise; its master asks again.
        String answered =
            read.contains("12.345")
                ? read
                : mbpoll(pair.two(), 17, "-t", "4:float", "-B", "-r", "10", "-o", "5");
        assertTrue(answered.contains("12.345"), "seed " + SEED + ", round " + round + answered);
      }
    }
  }

  @Test
  void aPortThatIsNotThereIsNamed() {
    IOException absent =
        assertThrows(IOException.class, () -> server("/dev/strapline-no-such-port", false));
    assertTrue(absent.toString().contains("/dev/strapline-no-such-port"), absent.toString());
    assertFalse(absent.toString().contains("null"), absent.toString());
  }

  private static String mbpoll(String port, int unit, String... options) throws Exception {
    List<String> command =
        new ArrayList<>(List.of("mbpoll", "-m", "rtu", "-b", "9600", "-P", "none", "-0", "-1"));
    command.addAll(List.of("-a", Integer.toString(unit)));
    command.addAll(List.of(options));
    if (!command.contains(port)) {
      command.add(port);
    }
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(process.waitFor(60, TimeUnit.SECONDS));
    return out;
  }
}
