package io.strapline.bridge.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.Eventually;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The program in a process of its own, as a service manager runs it. */
@Timeout(240)
class RunCommandIT {

  @TempDir Path folder;

  private final List<Process> started = new ArrayList<>();

  @AfterEach
  void leaveNothingRunning() {
    started.forEach(Process::destroyForcibly);
  }

  private Path plant(int modbusPort) throws IOException {
    Path file = folder.resolve("plant.yaml");
    return Files.writeString(
        file,
        """
        plant: Kestrel Quay
        opc-ua:
          port: 0
        modbus:
          port: %d
        points:
          LT-201:
            title: bitumen tank
            area: quay
            modbus-block: 1
            mounting:
              reference-height: 3 m
            source:
              simulated:
                signal: distance
                shows-as: live
                process:
                  draw-to: 0.5 m
                  fill-to: 2 m
                  fill-rate: 0.1 m/s
                  draw-rate: 0.1 m/s
        """
            .formatted(modbusPort));
  }

  private Process run(String... arguments) throws IOException {
    List<String> command = new ArrayList<>();
    command.add(ProcessHandle.current().info().command().orElseThrow());
    command.addAll(List.of("-cp", Objects.requireNonNull(System.getProperty("java.class.path"))));
    command.add(Main.class.getName());
    command.addAll(List.of(arguments));
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(folder.resolve("out.txt").toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    started.add(process);
    return process;
  }

  private String text(String name) {
    try {
      return Files.readString(folder.resolve(name), StandardCharsets.UTF_8);
    } catch (IOException absent) {
      return "";
    }
  }

  private int exitCode(Process process) throws InterruptedException {
    assertTrue(process.waitFor(90, TimeUnit.SECONDS), () -> "still running\n" + text("err.txt"));
    return process.exitValue();
  }

  @ParameterizedTest
  @ValueSource(strings = {"TERM", "INT"})
  void aSignalStopsItInOrderWithCodeZero(String signal) throws Exception {
    Process process = run("run", plant(0).toString());
    Eventually.holds("it runs", () -> text("err.txt").contains("first values published after"));
    new ProcessBuilder("kill", "-" + signal, Long.toString(process.pid())).start().waitFor();
    assertEquals(0, exitCode(process), () -> text("err.txt"));
    String log = text("err.txt");
    assertTrue(log.strip().endsWith("Kestrel Quay stopped [PlantRun]"), log);
    assertTrue(
        text("out.txt").contains("clients connect to opc.tcp://127.0.0.1:"), text("out.txt"));
  }

  @Test
  void stopsByItselfAfterTheGivenTime() throws Exception {
    Process process = run("run", plant(0).toString(), "--speed", "20", "--for", "1s", "--table");
    assertEquals(0, exitCode(process), () -> text("err.txt"));
    assertTrue(text("out.txt").contains("LT-201"), text("out.txt"));
  }

  @Test
  void aBusyPortIsToldInOneLineWithCodeOne() throws Exception {
    try (ServerSocket busy = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      Process process = run("run", plant(busy.getLocalPort()).toString());
      assertEquals(1, exitCode(process));
      String log = text("err.txt");
      assertTrue(log.contains("127.0.0.1"), log);
      assertTrue(log.contains(Integer.toString(busy.getLocalPort())), log);
      assertTrue(!log.contains("\tat "), log);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"--speed=0", "--speed=-1", "--speed=NaN", "--for=0s", "--for=soon", "--for=-5s"})
  void aWrongOptionIsToldWithCodeTwo(String option) throws Exception {
    Process process = run("run", plant(0).toString(), option);
    assertEquals(2, exitCode(process), () -> text("err.txt"));
    String name = option.substring(0, option.indexOf('='));
    assertTrue(text("err.txt").contains(name), text("err.txt"));
  }
}
