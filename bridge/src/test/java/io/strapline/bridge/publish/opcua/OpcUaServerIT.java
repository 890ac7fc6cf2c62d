package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.OpcUaSettings;
import io.strapline.bridge.testing.Eventually;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.milo.opcua.sdk.client.DiscoveryClient;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.security.SecurityPolicy;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UByte;
import org.eclipse.milo.opcua.stack.core.types.enumerated.TimestampsToReturn;
import org.eclipse.milo.opcua.stack.core.types.structured.EndpointDescription;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The whole publisher, read by the library's client without security. */
class OpcUaServerIT {

  @TempDir Path data;

  private interface Check {
    void with(TestPlant plant, OpcUaClient client) throws Exception;
  }

  private void served(Check check) throws Exception {
    TestPlant plant = TestPlant.on(data, true);
    try (OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.access())) {
      publisher.start();
      OpcUaClient client = connect(publisher.endpoint());
      try {
        check.with(plant, client);
      } finally {
        client.disconnect();
      }
    }
  }

  private static OpcUaClient connect(String url) throws UaException {
    OpcUaClient client =
        OpcUaClient.create(
            url,
            endpoints -> endpoints.stream().filter(OpcUaServerIT::isOpen).findFirst(),
            transport -> {},
            config -> {});
    client.connect();
    return client;
  }

  private static boolean isOpen(EndpointDescription endpoint) {
    return SecurityPolicy.None.getUri().equals(endpoint.getSecurityPolicyUri());
  }

  private static DataValue read(OpcUaClient client, String identifier) throws UaException {
    return readNode(client, id(client, identifier));
  }

  private static DataValue readNode(OpcUaClient client, NodeId node) throws UaException {
    return client.readValues(0, TimestampsToReturn.Both, List.of(node)).get(0);
  }

  private static NodeId id(OpcUaClient client, String identifier) {
    return new NodeId(
        Objects.requireNonNull(client.getNamespaceTable().getIndex(NodeList.NAMESPACE)),
        identifier);
  }

  @Test
  void waitsForTheFirstSampleWithoutAValue() throws Exception {
    served(
        (plant, client) -> {
          DataValue level = read(client, "LT-101.Level");
          assertNull(level.value().value());
          assertEquals(StatusCodes.Bad_WaitingForInitialData, level.statusCode().value());
        });
  }

  @Test
  void keepsTheLastGoodValueApartWhenTheSignalIsBad() throws Exception {
    served(
        (plant, client) -> {
          plant.distance(TestPlant.SILO, 4, 1);
          plant.tick(TestPlant.SILO, 4_000); // far beyond the second age limit
          DataValue level = read(client, "LT-101.Level");
          assertNull(level.value().value(), "OPC 10000-4: no value with a bad status");
          assertEquals(StatusCodes.Bad_NoCommunication, level.statusCode().value());
          DataValue lastGood = read(client, "LT-101.Level.LastGood");
          assertEquals(6.0, lastGood.value().value());
          assertEquals(new DateTime(TestPlant.at(1)), lastGood.sourceTime());
          assertEquals("BAD", read(client, "LT-101.Quality").value().value());
          assertEquals(1, read(client, "LT-101.DeviceHealth").value().value());
        });
  }

  @Test
  void marksAnAlarmThatIsHeldBackAsUncertain() throws Exception {
    served(
        (plant, client) -> {
          plant.distance(TestPlant.SILO, 0.8, 1); // level 9.2 m, high-high at 9 m
          DataValue active = read(client, "LT-101.Alarms.HighHigh.Active");
          assertEquals(true, active.value().value());
          assertEquals(StatusCodes.Good, active.statusCode().value());
          plant.tick(TestPlant.SILO, 4_000);
          assertTrue(read(client, "LT-101.Alarms.HighHigh.Active").statusCode().isUncertain());
          assertEquals(true, read(client, "LT-101.Alarms.BadSignal.Active").value().value());
        });
  }

  @Test
  void listsDiagnosticsAndGrowsOldByItself() throws Exception {
    served(
        (plant, client) -> {
          plant.tick(TestPlant.SILO, 4_000);
          String[] lines = (String[]) read(client, "LT-101.Diagnostics").value().value();
          assertTrue(Arrays.stream(lines).anyMatch(line -> line.startsWith("F ")));
          double age = number(client, "LT-101.Age");
          double beat = number(client, "Plant.Heartbeat");
          Eventually.holds("the age grows", () -> number(client, "LT-101.Age") > age + 0.9);
          Eventually.holds("the heart beats", () -> number(client, "Plant.Heartbeat") > beat);
        });
  }

  private static double number(OpcUaClient client, String identifier) {
    try {
      return ((Number) Objects.requireNonNull(read(client, identifier).value().value()))
          .doubleValue();
    } catch (UaException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void tellsHowFarItsDataCanBeUsed() throws Exception {
    served(
        (plant, client) -> {
          Eventually.holds("no point is usable", () -> serviceLevel(client) == 1);
          plant.distance(TestPlant.SILO, 4, 1);
          Eventually.holds("one of two points is usable", () -> serviceLevel(client) == 100);
          plant.distance(TestPlant.CARRIAGE, 4, 1);
          Eventually.holds("all points are usable", () -> serviceLevel(client) == 255);
        });
  }

  private static int serviceLevel(OpcUaClient client) {
    try {
      UByte level = (UByte) readNode(client, NodeIds.Server_ServiceLevel).value().value();
      return Objects.requireNonNull(level).intValue();
    } catch (UaException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void offersNoEndpointWithoutSecurityUnlessAskedTo() throws Exception {
    TestPlant plant = TestPlant.on(data, false);
    try (OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.access())) {
      publisher.start();
      Set<String> offered =
          DiscoveryClient.getEndpoints(publisher.endpoint()).get().stream()
              .map(EndpointDescription::getSecurityPolicyUri)
              .map(String::valueOf)
              .collect(Collectors.toSet());
      assertEquals(
          Set.of(
              SecurityPolicy.Basic256Sha256.getUri(), SecurityPolicy.Aes256_Sha256_RsaPss.getUri()),
          offered);
    }
  }

  @Test
  void keepsNodeIdsAndNamespacesOverARestart() throws Exception {
    String[] first = namespaces();
    String[] second = namespaces();
    assertArrayEquals(first, second);
    assertEquals(NodeList.NAMESPACE, second[3]);
  }

  private String[] namespaces() throws Exception {
    String[][] found = new String[1][];
    served(
        (plant, client) -> {
          assertTrue(read(client, "LT-101.Level").statusCode().isBad());
          found[0] = (String[]) readNode(client, NodeIds.Server_NamespaceArray).value().value();
        });
    return Objects.requireNonNull(found[0]);
  }

  @Test
  void namesTheAddressThatAnotherProgramHolds() throws Exception {
    try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      TestPlant plant = TestPlant.with(data, settings("127.0.0.1", taken.getLocalPort()));
      try (OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.access())) {
        IOException refused = assertThrows(IOException.class, publisher::start);
        String message = String.valueOf(refused.getMessage());
        assertTrue(message.contains("opc.tcp://127.0.0.1:" + taken.getLocalPort()), message);
      }
    }
  }

  @Test
  void namesAHostThatIsNotKnown() {
    TestPlant plant = TestPlant.with(data, settings("no.such.host.invalid", 0));
    try (OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.access())) {
      IOException refused = assertThrows(IOException.class, publisher::start);
      assertTrue(String.valueOf(refused.getMessage()).contains("no.such.host.invalid"));
    }
  }

  private static OpcUaSettings settings(String host, int port) {
    return new OpcUaSettings(true, host, port, true, List.of());
  }

  @Test
  void freesThePortAndMayBeClosedTwice() throws Exception {
    TestPlant plant = TestPlant.on(data, true);
    OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.access());
    publisher.start();
    int port = Integer.parseInt(publisher.endpoint().replaceFirst(".*:", ""));
    publisher.close();
    publisher.close();
    plant.distance(TestPlant.SILO, 4, 1); // an update after the end harms nobody
    try (ServerSocket free = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
      assertEquals(port, free.getLocalPort());
    }
  }
}
