package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import io.strapline.bridge.testing.Eventually;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An independent client on an encrypted session, once its certificate is trusted. */
class OpcUaPublisherIT {

  @TempDir static Path folder;

  private static TestPlant plant;
  private static OpcUaPublisher publisher;
  private static PeerClient peer;
  private static int namespace;

  @BeforeAll
  static void connectOnceTrusted() throws Exception {
    PeerClient.require();
    plant = TestPlant.on(folder.resolve("data"), false);
    publisher = new OpcUaPublisher(plant.settings(), plant.access());
    publisher.start();
    peer = PeerClient.start(folder.resolve("peer"));
    JsonNode refused = connect("Basic256Sha256");
    assertFalse(refused.path("ok").asBoolean(), "a client that nobody trusts must not get in");
    trustTheRejectedCertificate();
    Eventually.holds("the trusted client gets in", OpcUaPublisherIT::connected);
  }

  @AfterAll
  static void disconnect() throws Exception {
    if (peer != null) {
      peer.close();
    }
    if (publisher != null) {
      publisher.close();
    }
  }

  private static JsonNode connect(String policy) throws Exception {
    return peer.ask("connect", c -> c.put("url", publisher.endpoint()).put("policy", policy));
  }

  private static boolean connected() {
    try {
      JsonNode answer = connect("Basic256Sha256");
      List<String> uris = new ArrayList<>();
      answer.path("namespaces").forEach(uri -> uris.add(uri.asText()));
      namespace = uris.indexOf(NodeList.NAMESPACE);
      return answer.path("ok").asBoolean();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }

  /** Does what docs/security.md tells people to do: move the file. */
  private static void trustTheRejectedCertificate() throws IOException {
    Path pki = plant.settings().dataFolder().resolve("opcua");
    try (Stream<Path> files = Files.list(pki.resolve("rejected/certs"))) {
      Path file = files.findFirst().orElseThrow();
      Files.move(file, pki.resolve("trusted/certs").resolve(file.getFileName()));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
  }

  private static String id(String identifier) {
    return "ns=" + namespace + ";s=" + identifier;
  }

  private static JsonNode read(String identifier) throws Exception {
    return peer.done("read", c -> c.putArray("nodes").add(id(identifier))).path("values").get(0);
  }

  @Test
  void readsValueStatusAndSourceTime() throws Exception {
    plant.distance(TestPlant.SILO, 4, 1);
    JsonNode level = read("LT-101.Level");
    assertEquals(6.0, level.path("value").asDouble());
    assertEquals("Good", level.path("statusName").asText());
    assertEquals(TestPlant.at(1), Instant.parse(level.path("sourceTime").asText()));
  }

  @Test
  void browsesExactlyTheNodesOfTheNodeList() throws Exception {
    JsonNode tree = peer.done("tree", c -> c.put("node", id("Plant"))).path("nodes");
    Set<String> found = new TreeSet<>();
    for (JsonNode node : tree) {
      boolean property = node.path("reference").asText().endsWith("i=46");
      String identifier = node.path("id").asText().replaceFirst("^ns=\\d+;s=", "");
      if (node.path("nodeClass").asInt() == 2 && !property && !isOfCondition(identifier)) {
        found.add(identifier);
      }
    }
    Set<String> listed =
        NodeList.of(plant.settings()).rows().stream()
            .map(NodeList.Row::identifier)
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(listed, found);
  }

  /** The fields of a condition are those of its standard type and not listed one by one. */
  private static boolean isOfCondition(String identifier) {
    return NodeList.of(plant.settings()).conditions().stream()
        .anyMatch(condition -> identifier.startsWith(condition.identifier() + "."));
  }

  @Test
  void hasTheConditionsOfTheNodeListWithTheirTypes() throws Exception {
    JsonNode tree = peer.done("tree", c -> c.put("node", id("Plant"))).path("nodes");
    Map<String, String> found = new TreeMap<>();
    for (JsonNode node : tree) {
      String identifier = node.path("id").asText().replaceFirst("^ns=\\d+;s=", "");
      if (identifier.endsWith("Alarm")) {
        found.put(identifier, node.path("type").asText().replace("ns=0;", ""));
      }
    }
    Map<String, String> listed = new TreeMap<>();
    for (NodeList.Condition condition : NodeList.of(plant.settings()).conditions()) {
      // Numbers: OPC 10000-6, file of node ids.
      boolean level = condition.type().equals("ExclusiveLevelAlarmType");
      listed.put(condition.identifier(), level ? "i=9482" : "i=18347");
    }
    assertEquals(listed, found);
  }

  @Test
  void tellsUnitsAndRanges() throws Exception {
    JsonNode unit = read("LT-101.Volume.EngineeringUnits").path("value");
    assertEquals(5067857, unit.path("unitId").asInt()); // MTQ, OPC 10000-8 5.6.4.4
    assertEquals("m³", unit.path("displayName").path("text").asText());
    JsonNode range = read("LT-101.Volume.EURange").path("value");
    assertEquals(0.0, range.path("low").asDouble());
    assertEquals(10.0, range.path("high").asDouble());
  }

  @Test
  void refusesToWrite() throws Exception {
    JsonNode answer = peer.done("write", c -> c.put("node", id("LT-101.Level")).put("value", 1.0));
    assertEquals("BadNotWritable", answer.path("statusName").asText());
  }

  @Test
  void tellsAStatusChangeWhileTheValueStandsStill() throws Exception {
    plant.distance(TestPlant.CARRIAGE, 30, 1);
    subscribe(OptionalDouble.empty(), "ZT-401.Distance");
    List<JsonNode> seen = new ArrayList<>();
    awaitChange(seen, "ZT-401.Distance", "Good");
    plant.tick(TestPlant.CARRIAGE, 20); // older than the first age limit, value held
    awaitChange(seen, "ZT-401.Distance", "UncertainNoCommunicationLastUsableValue");
    assertEquals(30.0, seen.get(seen.size() - 1).path("value").asDouble());
  }

  @Test
  void keepsThePercentDeadband() throws Exception {
    plant.distance(TestPlant.SILO, 5, 100);
    JsonNode subscribed = subscribe(OptionalDouble.of(10), "LT-101.Ullage");
    assertEquals("Good", subscribed.path("items").get(0).path("statusName").asText());
    List<JsonNode> seen = new ArrayList<>();
    awaitValue(seen, "LT-101.Ullage", 5.0);
    plant.distance(TestPlant.SILO, 5.5, 101); // half of the deadband of 10 % of 10 m
    plant.distance(TestPlant.SILO, 7, 102);
    awaitValue(seen, "LT-101.Ullage", 7.0);
    assertTrue(seen.stream().noneMatch(change -> change.path("value").asDouble() == 5.5));
  }

  @Test
  void holdsSamplingAndQueueWithinTheLimits() throws Exception {
    JsonNode item = subscribe(OptionalDouble.empty(), "LT-101.Percent").path("items").get(0);
    assertEquals(100.0, item.path("sampling").asDouble());
    assertEquals(100, item.path("queue").asInt());
  }

  private static JsonNode subscribe(OptionalDouble percentDeadband, String identifier)
      throws Exception {
    return peer.done(
        "subscribe",
        c -> {
          c.put("publishing", 100).put("sampling", 0).putArray("nodes").add(id(identifier));
          percentDeadband.ifPresent(percent -> c.put("percentDeadband", percent));
        });
  }

  private static void awaitChange(List<JsonNode> seen, String identifier, String status) {
    awaitSeen(seen, identifier, status, c -> c.path("statusName").asText().startsWith(status));
  }

  private static void awaitValue(List<JsonNode> seen, String identifier, double value) {
    awaitSeen(seen, identifier, "value " + value, c -> c.path("value").asDouble() == value);
  }

  private static void awaitSeen(
      List<JsonNode> seen,
      String identifier,
      String what,
      java.util.function.Predicate<JsonNode> wanted) {
    Eventually.holds(
        identifier + " with " + what + " among " + seen,
        () -> {
          seen.addAll(changesOf(identifier));
          return !seen.isEmpty() && wanted.test(seen.get(seen.size() - 1));
        });
  }

  private static List<JsonNode> changesOf(String identifier) {
    try {
      List<JsonNode> changes = new ArrayList<>();
      peer.done("changes", c -> {}).path("changes").forEach(changes::add);
      return changes.stream().filter(c -> c.path("node").asText().equals(id(identifier))).toList();
    } catch (Exception e) {
      throw new IllegalStateException(e);
    }
  }
}
