package io.strapline.bridge.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings;
import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.config.SourceSettings.LevelProcess;
import io.strapline.bridge.config.SourceSettings.ShowsAs;
import io.strapline.bridge.config.SourceSettings.Signal;
import io.strapline.bridge.config.SourceSettings.Simulated;
import io.strapline.bridge.model.RealClock;
import io.strapline.bridge.testing.Plants;
import io.strapline.bridge.testing.Refused;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A port that another program has: told in words, and nothing is left running. */
@Timeout(120)
class BusyPortIT {

  private static final InetAddress LOOPBACK = InetAddress.getLoopbackAddress();

  @TempDir Path data;

  private PlantSettings plant(int opcUaPort, int modbusPort) {
    Simulated source =
        new Simulated(
            Signal.LEVEL, ShowsAs.LIVE, 1, 1, 0, new LevelProcess(1, 1, 2, 1, 1), List.of());
    PointConfig point =
        new PointConfig(
            "test", "quay", Plants.plumb("LT-101", 10).build(), source, OptionalInt.of(1));
    return new PlantSettings(
        "Kestrel Quay",
        Path.of("kestrel-quay.yaml"),
        data,
        new OpcUaSettings(true, "127.0.0.1", opcUaPort, true, List.of()),
        new ModbusSettings(
            true,
            "127.0.0.1",
            modbusPort,
            Set.of(1),
            ModbusSettings.WordOrder.ABCD,
            ModbusSettings.BadValue.NAN),
        List.of(point));
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, LOOPBACK)) {
      return free.getLocalPort();
    }
  }

  private void assertToldAndNothingRuns(PlantSettings plant, int busy) throws IOException {
    try (PlantRun run = PlantRun.of(plant, RealClock.startNow(), new StandardParts())) {
      String refused = Refused.message(IOException.class, run::start);
      assertTrue(refused.contains(Integer.toString(busy)), refused);
      assertTrue(refused.contains("127.0.0.1"), refused);
      assertEquals(0, run.store().view().generation(), "no sample was ever taken");
    }
  }

  @Test
  void aBusyModbusPortFreesTheOpcUaPortAgain() throws IOException {
    int opcUa = freePort();
    try (ServerSocket busy = new ServerSocket(0, 1, LOOPBACK)) {
      assertToldAndNothingRuns(plant(opcUa, busy.getLocalPort()), busy.getLocalPort());
    }
    try (ServerSocket again = new ServerSocket(opcUa, 1, LOOPBACK)) {
      assertTrue(again.isBound());
    }
  }

  @Test
  void aBusyOpcUaPortEndsTheStart() throws IOException {
    try (ServerSocket busy = new ServerSocket(0, 1, LOOPBACK)) {
      assertToldAndNothingRuns(plant(busy.getLocalPort(), 0), busy.getLocalPort());
    }
  }
}
