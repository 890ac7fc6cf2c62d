package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.sdk.server.nodes.UaMethodNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.Variant;
import org.eclipse.milo.opcua.stack.core.types.structured.CallMethodRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CallMethodResult;
import org.junit.jupiter.api.Test;

/** A call of a denied and an allowed method, beside what the library makes of it. */
class SeparateCallsIT {

  private final AtomicInteger denied = new AtomicInteger();

  private List<Long> call(ServerPair pair) throws Exception {
    UaMethodNode node = method(pair, NodeIds.Server_GetMonitoredItems);
    node.setUserExecutable(false);
    var original = node.getInvocationHandler();
    node.setInvocationHandler(
        (context, request) -> {
          denied.incrementAndGet();
          return original.invoke(context, request);
        });
    OpcUaClient client = pair.start().client();
    try {
      CallMethodResult[] results =
          client
              .call(
                  List.of(
                      request(NodeIds.Server_GetMonitoredItems),
                      request(NodeIds.Server_ResendData)))
              .getResults();
      return Arrays.stream(Objects.requireNonNull(results))
          .map(result -> result.getStatusCode().value())
          .toList();
    } finally {
      client.disconnect();
    }
  }

  private static UaMethodNode method(ServerPair pair, NodeId id) {
    return (UaMethodNode) pair.server().getAddressSpaceManager().getManagedNode(id).orElseThrow();
  }

  private static CallMethodRequest request(NodeId method) {
    return new CallMethodRequest(
        NodeIds.Server, method, new Variant[] {new Variant(uint(987_654))});
  }

  @Test
  void deniesTheOneAndCallsTheOther() throws Exception {
    try (ServerPair pair = ServerPair.fixed()) {
      assertEquals(
          List.of(StatusCodes.Bad_UserAccessDenied, StatusCodes.Bad_SubscriptionIdInvalid),
          call(pair));
      assertEquals(0, denied.get());
    }
  }

  @Test
  void libraryCallsTheDeniedOneAndNeverAnswers() throws Exception {
    try (ServerPair pair = ServerPair.plain()) {
      UaException failure = assertThrows(UaException.class, () -> call(pair));
      assertEquals(StatusCodes.Bad_Timeout, failure.getStatusCode().value());
      assertEquals(1, denied.get());
    }
  }
}
