package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.strapline.bridge.testing.Peers;
import java.io.BufferedReader;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;

/**
 * The independent client of {@code src/test/peers/opcua} in a process of its own: one JSON object a
 * line there and back.
 */
final class PeerClient implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final Path FOLDER = Path.of("src/test/peers/opcua");

  private final Process process;
  private final BufferedWriter requests;
  private final BufferedReader answers;

  private PeerClient(Process process) {
    this.process = process;
    requests =
        new BufferedWriter(
            new OutputStreamWriter(process.getOutputStream(), StandardCharsets.UTF_8));
    answers =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  /** Skips or fails the calling test when the client is not installed. */
  static void require() {
    Peers.require("node-opcua-client", "node", FOLDER.resolve("probe.mjs").toString());
  }

  /** Starts the client with its own certificates in a folder. */
  static PeerClient start(Path certificates) throws IOException {
    Process process =
        new ProcessBuilder("node", FOLDER.resolve("client.mjs").toString(), certificates.toString())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    return new PeerClient(process);
  }

  /** Sends a command and returns its answer, whatever it is. */
  JsonNode ask(String command, Consumer<ObjectNode> arguments) throws Exception {
    ObjectNode request = JSON.createObjectNode().put("command", command);
    arguments.accept(request);
    requests.write(JSON.writeValueAsString(request));
    requests.newLine();
    requests.flush();
    return JSON.readTree(CompletableFuture.supplyAsync(this::nextLine).get(60, TimeUnit.SECONDS));
  }

  /** Sends a command that must succeed. */
  JsonNode done(String command, Consumer<ObjectNode> arguments) throws Exception {
    JsonNode answer = ask(command, arguments);
    assertTrue(answer.path("ok").asBoolean(), () -> command + ": " + answer);
    return answer;
  }

  /** Returns the next answer; the client's library also prints lines of its own. */
  private String nextLine() {
    try {
      String line = answers.readLine();
      while (line != null && !line.startsWith("{")) {
        line = answers.readLine();
      }
      return line == null ? "{\"ok\":false,\"error\":\"the client has ended\"}" : line;
    } catch (IOException broken) {
      throw new java.io.UncheckedIOException(broken);
    }
  }

  /** Ends the client without a word to the server, as a crash would. */
  void kill() {
    process.destroyForcibly().onExit().orTimeout(10, TimeUnit.SECONDS).join();
  }

  @Override
  public void close() throws IOException {
    if (process.isAlive()) {
      requests.close();
      process.onExit().completeOnTimeout(process, 5, TimeUnit.SECONDS).join();
    }
    kill();
  }
}
