package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.sdk.server.servicesets.AbstractServiceSet.createResponseHeader;

import java.util.ArrayList;
import java.util.List;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.servicesets.impl.DefaultMethodServiceSet;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.builtin.DiagnosticInfo;
import org.eclipse.milo.opcua.stack.core.types.structured.CallMethodRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CallMethodResult;
import org.eclipse.milo.opcua.stack.core.types.structured.CallRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CallResponse;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;

/**
 * Calls the methods of a request one by one, each with its own check of access. When a request
 * mixes an allowed with a denied method, the library runs the denied one too and never answers
 * (Milo pull request 1802). Safe for any thread.
 */
final class SeparateCalls extends DefaultMethodServiceSet {

  private final OpcUaServer server;

  SeparateCalls(OpcUaServer server) {
    super(server);
    this.server = server;
  }

  @Override
  public CallResponse onCall(ServiceRequestContext context, CallRequest request)
      throws UaException {
    CallMethodRequest[] asked = request.getMethodsToCall();
    if (asked == null || asked.length < 2) {
      return super.onCall(context, request);
    }
    if (asked.length > server.getConfig().getLimits().getMaxNodesPerMethodCall().longValue()) {
      throw new UaException(StatusCodes.Bad_TooManyOperations);
    }
    List<CallMethodResult> results = new ArrayList<>();
    for (CallMethodRequest one : asked) {
      CallRequest alone =
          new CallRequest(request.getRequestHeader(), new CallMethodRequest[] {one});
      CallMethodResult[] answer = super.onCall(context, alone).getResults();
      if (answer == null || answer.length != 1) {
        throw new UaException(StatusCodes.Bad_InternalError);
      }
      results.add(answer[0]);
    }
    return new CallResponse(
        createResponseHeader(request),
        results.toArray(CallMethodResult[]::new),
        new DiagnosticInfo[0]);
  }
}
