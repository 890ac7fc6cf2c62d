package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ubyte;
import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.Eventually;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.subscriptions.Subscription;
import org.eclipse.milo.opcua.stack.core.AttributeId;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;
import org.eclipse.milo.opcua.stack.core.types.enumerated.MonitoringMode;
import org.eclipse.milo.opcua.stack.core.types.enumerated.TimestampsToReturn;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSubscriptionResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoredItemCreateRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.MonitoringParameters;
import org.eclipse.milo.opcua.stack.core.types.structured.ReadValueId;
import org.junit.jupiter.api.Test;

class SubscriptionReaperIT {

  @Test
  void removesTheSubscriptionOfALostClientWhichTheLibraryKeepsForEver() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      OpcUaServer server = pair.start().server();
      OpcUaClient client = pair.client();
      subscribe(client);
      SubscriptionReaper reaper = new SubscriptionReaper(server);
      reaper.run();
      assertEquals(1, server.getSubscriptions().size(), "a living client keeps what it has");

      loseSessionOf(server);
      Subscription orphan = server.getSubscriptions().values().iterator().next();
      Eventually.holds("the lifetime is over", () -> orphan.getLifetimeCounter() < 1);
      assertTrue(
          server.getSubscriptions().containsKey(orphan.getId()),
          "the library removes it by itself now: the reaper can go");
      assertEquals(1, server.getMonitoredItemCount().get());

      reaper.run();
      reaper.run();
      assertTrue(server.getSubscriptions().isEmpty());
      assertEquals(0, server.getMonitoredItemCount().get());
      var unused = client.disconnectAsync();
    }
  }

  /** What the server does when the session timeout of a dead client is over. */
  private static void loseSessionOf(OpcUaServer server) {
    Session session = server.getSessionManager().getAllSessions().get(0);
    server.getSessionManager().killSession(session.getSessionId(), false);
  }

  private static void subscribe(OpcUaClient client) throws Exception {
    CreateSubscriptionResponse made =
        client.createSubscription(100.0, uint(3), uint(1), uint(0), true, ubyte(0));
    ReadValueId time =
        new ReadValueId(
            NodeIds.Server_ServerStatus_CurrentTime,
            AttributeId.Value.uid(),
            null,
            QualifiedName.NULL_VALUE);
    MonitoringParameters parameters =
        new MonitoringParameters(uint(1), 100.0, null, uint(10), true);
    MonitoredItemCreateRequest item =
        new MonitoredItemCreateRequest(time, MonitoringMode.Reporting, parameters);
    client.createMonitoredItems(
        made.getSubscriptionId(), TimestampsToReturn.Both, java.util.List.of(item));
  }
}
