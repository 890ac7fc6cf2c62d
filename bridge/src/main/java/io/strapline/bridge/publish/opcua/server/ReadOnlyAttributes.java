package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.sdk.server.servicesets.AbstractServiceSet.createResponseHeader;

import java.util.Arrays;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.servicesets.impl.DefaultAttributeServiceSet;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DiagnosticInfo;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.types.structured.WriteRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.WriteResponse;
import org.eclipse.milo.opcua.stack.core.types.structured.WriteValue;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;
import org.jspecify.annotations.Nullable;

/**
 * Refuses every write, of every attribute of every node, before the library looks at it. The server
 * publishes and takes nothing. The library would let some attributes other than the value be
 * written without asking the write mask, and leaves some malformed writes unanswered (Milo pull
 * requests 1750 and 1792). Safe for any thread.
 */
final class ReadOnlyAttributes extends DefaultAttributeServiceSet {

  private final OpcUaServer server;

  ReadOnlyAttributes(OpcUaServer server) {
    super(server);
    this.server = server;
  }

  @Override
  public WriteResponse onWrite(ServiceRequestContext context, WriteRequest request)
      throws UaException {
    server.getSessionManager().getSession(context, request.getRequestHeader());
    StatusCode[] refused =
        Arrays.stream(asked(request)).map(this::refuse).toArray(StatusCode[]::new);
    return new WriteResponse(createResponseHeader(request), refused, new DiagnosticInfo[0]);
  }

  private WriteValue[] asked(WriteRequest request) throws UaException {
    WriteValue @Nullable [] values = request.getNodesToWrite();
    if (values == null || values.length == 0) {
      throw new UaException(StatusCodes.Bad_NothingToDo);
    }
    if (values.length > server.getConfig().getLimits().getMaxNodesPerWrite().longValue()) {
      throw new UaException(StatusCodes.Bad_TooManyOperations);
    }
    return values;
  }

  private StatusCode refuse(WriteValue value) {
    NodeId nodeId = value.getNodeId();
    boolean known = server.getAddressSpaceManager().getManagedNode(nodeId).isPresent();
    return new StatusCode(known ? StatusCodes.Bad_NotWritable : StatusCodes.Bad_NodeIdUnknown);
  }
}
