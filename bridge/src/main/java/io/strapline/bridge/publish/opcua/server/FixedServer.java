package io.strapline.bridge.publish.opcua.server;

import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.milo.opcua.sdk.core.AccessLevel;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.OpcUaServerConfig;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.sdk.server.servicesets.Service;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.types.UaRequestMessageType;
import org.eclipse.milo.opcua.stack.core.types.UaResponseMessageType;
import org.eclipse.milo.opcua.stack.core.util.EndpointUtil;
import org.eclipse.milo.opcua.stack.transport.server.OpcServerTransportFactory;
import org.eclipse.milo.opcua.stack.transport.server.ServiceRequestContext;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The library's server with its gaps closed: every request is answered, nothing can be written, an
 * event is told once, publish answers and session names are bounded. Safe for any thread.
 */
public final class FixedServer extends OpcUaServer {

  private static final Logger LOG = LoggerFactory.getLogger(FixedServer.class);

  private final EventItems events = new EventItems();
  private final Set<String> toldFailures = ConcurrentHashMap.newKeySet();

  /** Makes a server that is not yet bound. */
  public FixedServer(OpcUaServerConfig config, OpcServerTransportFactory transports) {
    super(config, transports);
    config.getEndpoints().stream()
        .map(endpoint -> EndpointUtil.getPath(endpoint.getEndpointUrl()))
        .distinct()
        .forEach(this::replaceServices);
    lockDiagnosticsSwitch();
  }

  private void replaceServices(String path) {
    addServiceSet(path, new ClampedSubscriptions(this));
    addServiceSet(path, new ShortSessionNames(this));
    addServiceSet(path, new ReadOnlyAttributes(this));
    addServiceSet(path, new EventFilters(this));
    addServiceSet(path, new SeparateCalls(this));
  }

  /**
   * With this switch on, any client could read session, user and certificate of every other one
   * (Milo pull request 1803); the library leaves it writable for all.
   */
  private void lockDiagnosticsSwitch() {
    getAddressSpaceManager()
        .getManagedNode(NodeIds.Server_ServerDiagnostics_EnabledFlag)
        .filter(UaVariableNode.class::isInstance)
        .map(UaVariableNode.class::cast)
        .ifPresent(
            node -> {
              node.setAccessLevel(AccessLevel.toValue(AccessLevel.READ_ONLY));
              node.setUserAccessLevel(AccessLevel.toValue(AccessLevel.READ_ONLY));
            });
  }

  @Override
  public EventItems getEventNotifier() {
    return events;
  }

  @Override
  protected @Nullable ServiceHandler getServiceHandler(String path, Service service) {
    ServiceHandler handler = super.getServiceHandler(path, service);
    if (handler == null) {
      return null;
    }
    return handler instanceof AsyncServiceHandler async
        ? answeringAsync(service, async)
        : answering(service, handler);
  }

  /**
   * The library answers a {@link UaException} only; after anything else the client would wait until
   * its timeout.
   */
  private ServiceHandler answering(Service service, ServiceHandler handler) {
    return (context, request) -> {
      try {
        return handler.handle(context, request);
      } catch (RuntimeException | StackOverflowError failure) {
        throw told(service, failure);
      }
    };
  }

  private AsyncServiceHandler answeringAsync(Service service, AsyncServiceHandler handler) {
    return new AsyncServiceHandler() {
      @Override
      public CompletableFuture<UaResponseMessageType> handleAsync(
          ServiceRequestContext context, UaRequestMessageType request) {
        try {
          return handler.handleAsync(context, request);
        } catch (RuntimeException | StackOverflowError failure) {
          return CompletableFuture.failedFuture(told(service, failure));
        }
      }
    };
  }

  private UaException told(Service service, Throwable failure) {
    if (toldFailures.add(service + failure.getClass().getName())) {
      LOG.error(
          "OPC UA service {} failed; later failures of this sort stay silent", service, failure);
    }
    return new UaException(StatusCodes.Bad_InternalError, failure);
  }
}
