package io.strapline.bridge.publish.opcua;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ubyte;
import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import io.strapline.bridge.publish.opcua.security.AccessRule;
import io.strapline.bridge.publish.opcua.security.Pki;
import io.strapline.bridge.publish.opcua.server.FixedServer;
import io.strapline.bridge.publish.opcua.server.ServerLimits;
import io.strapline.bridge.publish.opcua.server.ServerThreads;
import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import org.eclipse.milo.opcua.sdk.server.EndpointConfig;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.OpcUaServerConfig;
import org.eclipse.milo.opcua.sdk.server.model.objects.ServerTypeNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.transport.TransportProfile;
import org.eclipse.milo.opcua.stack.core.types.builtin.DateTime;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.enumerated.ServerState;
import org.eclipse.milo.opcua.stack.core.types.structured.BuildInfo;
import org.eclipse.milo.opcua.stack.transport.server.tcp.OpcTcpServerTransport;
import org.eclipse.milo.opcua.stack.transport.server.tcp.OpcTcpServerTransportConfig;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Sets the server up, binds it and keeps its own status truthful. Stateless. */
final class ServerHost {

  private static final Logger LOG = LoggerFactory.getLogger(ServerHost.class);
  private static final String PRODUCT_URI = "urn:strapline:bridge";

  private ServerHost() {}

  /** Makes the server; nothing is bound yet. */
  static FixedServer make(
      String plant, Listening listening, Pki pki, AccessRule rule, ServerThreads threads) {
    OpcUaServerConfig config =
        OpcUaServerConfig.builder()
            .setApplicationName(LocalizedText.english("Strapline " + plant))
            .setApplicationUri(pki.own().applicationUri())
            .setProductUri(PRODUCT_URI)
            .setBuildInfo(buildInfo())
            .setEndpoints(listening.endpoints(pki.own().certificate(), rule))
            .setCertificateManager(pki.manager())
            .setIdentityValidator(rule.validator())
            .setRoleMapper(rule.roles())
            .setLimits(new ServerLimits())
            .setEncodingLimits(ServerLimits.ENCODING)
            .setExecutor(threads.workers())
            .setScheduledExecutor(threads.timer())
            .build();
    FixedServer server = new FixedServer(config, profile -> transport(profile, threads));
    // The library claims a profile that it was never certified for.
    serverNode(server).getServerCapabilitiesNode().setServerProfileArray(new String[0]);
    return server;
  }

  private static OpcTcpServerTransport transport(TransportProfile profile, ServerThreads threads) {
    if (profile != TransportProfile.TCP_UASC_UABINARY) {
      throw new IllegalArgumentException("only opc.tcp is served, not " + profile);
    }
    return new OpcTcpServerTransport(
        OpcTcpServerTransportConfig.newBuilder().setExecutor(threads.workers()).build());
  }

  private static BuildInfo buildInfo() {
    String version = ServerHost.class.getPackage().getImplementationVersion();
    String known = version == null ? "development" : version;
    return new BuildInfo(
        PRODUCT_URI, "Strapline", "Strapline bridge", known, known, DateTime.MIN_VALUE);
  }

  /**
   * Binds the server. The library only warns when one of several endpoints cannot be bound, so what
   * is bound is compared with what was asked for.
   *
   * @throws IOException naming the address
   */
  static void bind(OpcUaServer server, Listening listening) throws IOException {
    try {
      server.startup().get();
    } catch (ExecutionException e) {
      throw Listening.cannot(listening.host(), listening.port(), "no endpoint was bound", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw Listening.cannot(listening.host(), listening.port(), "interrupted", e);
    }
    Set<EndpointConfig> missing = new HashSet<>(server.getConfig().getEndpoints());
    server.getBoundEndpoints().forEach(missing::remove);
    if (!missing.isEmpty()) {
      String first = missing.iterator().next().getEndpointUrl();
      throw Listening.cannot(
          listening.host(),
          listening.port(),
          "endpoint " + first + " was not bound",
          new IllegalStateException(missing.size() + " endpoints are missing"));
    }
  }

  /**
   * Tells clients how far the server's data can be used: OPC 10000-4, 6.6.2.4.2: 255 healthy, 2 to
   * 199 degraded, 1 no data.
   *
   * @param usable points whose level is not BAD
   * @param all points, at least one
   */
  static int serviceLevel(long usable, long all) {
    if (usable >= all) {
      return 255;
    }
    return usable == 0 ? 1 : (int) (2 + 197 * usable / all);
  }

  static void setServiceLevel(OpcUaServer server, int level) {
    ServerTypeNode node = serverNode(server);
    if (node.getServiceLevel().intValue() != level) {
      node.setServiceLevel(ubyte(level));
    }
  }

  /** Tells clients that the server stops, and stops it. */
  static void stop(OpcUaServer server) {
    var status = serverNode(server).getServerStatusNode();
    status.setShutdownReason(LocalizedText.english("the bridge is being stopped"));
    status.setSecondsTillShutdown(uint(0));
    status.setState(ServerState.Shutdown);
    try {
      server.shutdown().join();
    } catch (IllegalStateException neverStarted) {
      // A server that failed before it was bound has nothing to free.
      LOG.debug("OPC UA: server stopped before it was started", neverStarted);
    }
  }

  private static ServerTypeNode serverNode(OpcUaServer server) {
    return (ServerTypeNode)
        server.getAddressSpaceManager().getManagedNode(NodeIds.Server).orElseThrow();
  }
}
