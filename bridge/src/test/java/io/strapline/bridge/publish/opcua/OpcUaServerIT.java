package io.strapline.bridge.publish.opcua;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.enumerated.TimestampsToReturn;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OpcUaServerIT {

  @TempDir Path data;

  @Test
  void servesGoodValuesWithTheSourceTimeOfTheSample() throws Exception {
    TestPlant plant = TestPlant.on(data, true);
    try (OpcUaPublisher publisher = new OpcUaPublisher(plant.settings(), plant.store())) {
      publisher.start();
      plant.distance(TestPlant.SILO, 4, 1);
      OpcUaClient client = connect(publisher.endpoint());
      try {
        DataValue level = read(client, "LT-101.Level");
        assertEquals(6.0, level.value().value());
        assertEquals(StatusCodes.Good, level.statusCode().value());
        assertEquals(new DateTime(TestPlant.at(1)), level.sourceTime());
      } finally {
        client.disconnect();
      }
    }
  }

  static OpcUaClient connect(String url) throws UaException {
    OpcUaClient client = OpcUaClient.create(url);
    client.connect();
    return client;
  }

  static DataValue read(OpcUaClient client, String identifier) throws UaException {
    return client.readValues(0, TimestampsToReturn.Both, List.of(id(client, identifier))).get(0);
  }

  static NodeId id(OpcUaClient client, String identifier) {
    return new NodeId(
        Objects.requireNonNull(client.getNamespaceTable().getIndex(NodeList.NAMESPACE)),
        identifier);
  }
}
