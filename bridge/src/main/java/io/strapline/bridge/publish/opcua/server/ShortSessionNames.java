package io.strapline.bridge.publish.opcua.server;

import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.servicesets.impl.DefaultSessionServiceSet;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSessionRequest;
import org.eclipse.milo.opcua.stack.core.types.structured.CreateSessionResponse;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;
import org.jspecify.annotations.Nullable;

/**
 * Shortens the session names that clients choose. The library makes a node of every name, however
 * long (Milo pull request 1747). Safe for any thread.
 */
final class ShortSessionNames extends DefaultSessionServiceSet {

  /** Longest name that is kept, in characters. */
  static final int LONGEST = 128;

  ShortSessionNames(OpcUaServer server) {
    super(server);
  }

  @Override
  public CreateSessionResponse onCreateSession(
      ServiceRequestContext context, CreateSessionRequest request) throws UaException {
    return super.onCreateSession(context, shortened(request));
  }

  static CreateSessionRequest shortened(CreateSessionRequest request) {
    return new CreateSessionRequest(
        request.getRequestHeader(),
        request.getClientDescription(),
        request.getServerUri(),
        request.getEndpointUrl(),
        shortened(request.getSessionName()),
        request.getClientNonce(),
        request.getClientCertificate(),
        request.getRequestedSessionTimeout(),
        request.getMaxResponseMessageSize());
  }

  private static String shortened(@Nullable String name) {
    if (name == null) {
      return "";
    }
    return name.length() <= LONGEST ? name : name.substring(0, LONGEST);
  }
}
