package io.strapline.bridge.publish.opcua.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.sdk.core.AccessLevel;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.sdk.server.servicesets.impl.DefaultViewServiceSet;
import org.eclipse.milo.opcua.stack.core.AttributeId;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.structured.RegisterNodesRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.RegisterNodesResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.WriteValue;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;
import org.junit.jupiter.api.Test;

/** Each fix beside the library's own server; where that one is right by now, the fix can go. */
class FixedServerIT {

  private static final NodeId SWITCH = NodeIds.Server_ServerDiagnostics_EnabledFlag;

  @Test
  void answersARequestWhoseServiceFails() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      assertEquals(StatusCodes.Bad_InternalError, statusOfAFailingService(pair));
    }
  }

  @Test
  void libraryLeavesARequestUnansweredWhoseServiceFails() throws Exception {
    try (ServerPair pair = ServerPair.plain()) {
      assertEquals(StatusCodes.Bad_Timeout, statusOfAFailingService(pair));
    }
  }

  private static long statusOfAFailingService(ServerPair pair) throws Exception {
    pair.server()
        .addServiceSet(
            "/",
            new DefaultViewServiceSet(pair.server()) {
              @Override
              public RegisterNodesResponse onRegisterNodes(
                  ServiceRequestContext context, RegisterNodesRequest request) {
                throw new IllegalStateException("on purpose");
              }
            });
    OpcUaClient client = pair.start().client();
    try {
      UaException failure =
          assertThrows(
              UaException.class, () -> client.registerNodes(List.of(NodeIds.Server_ServerStatus)));
      return failure.getStatusCode().value();
    } finally {
      client.disconnect();
    }
  }

  @Test
  void locksTheDiagnosticsSwitch() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      assertEquals(AccessLevel.toValue(AccessLevel.READ_ONLY), access(pair.start()));
      OpcUaClient client = pair.client();
      try {
        assertEquals(
            StatusCodes.Bad_NotWritable, write(client, AttributeId.Value, new Variant(true)));
      } finally {
        client.disconnect();
      }
    }
  }

  @Test
  void libraryLetsAnyoneTurnTheDiagnosticsSwitch() throws Exception {
    try (ServerPair pair = ServerPair.plain()) {
      assertEquals(AccessLevel.toValue(AccessLevel.READ_WRITE), access(pair.start()));
    }
  }

  private static Object access(ServerPair pair) {
    UaVariableNode node =
        (UaVariableNode)
            pair.server().getAddressSpaceManager().getManagedNode(SWITCH).orElseThrow();
    return node.getUserAccessLevel();
  }

  @Test
  void refusesToWriteOtherAttributesAndUnknownNodes() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      OpcUaClient client = pair.start().client();
      try {
        Variant yes = new Variant(true);
        assertEquals(StatusCodes.Bad_NotWritable, write(client, AttributeId.Historizing, yes));
        WriteValue unknown =
            new WriteValue(
                new NodeId(0, 999_999), AttributeId.Value.uid(), null, DataValue.valueOnly(yes));
        assertEquals(
            StatusCodes.Bad_NodeIdUnknown, client.write(List.of(unknown)).getResults()[0].value());
      } finally {
        client.disconnect();
      }
    }
  }

  private static long write(OpcUaClient client, AttributeId attribute, Variant value)
      throws UaException {
    WriteValue write = new WriteValue(SWITCH, attribute.uid(), null, DataValue.valueOnly(value));
    return client.write(List.of(write)).getResults()[0].value();
  }
}
