package io.strapline.bridge.publish.opcua.server;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.Set;
import java.util.function.BiFunction;
import org.eclipse.milo.opcua.sdk.client.OpcUaClient;
import org.eclipse.milo.opcua.sdk.server.EndpointConfig;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.OpcUaServerConfig;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.security.DefaultCertificateManager;
import org.eclipse.milo.opcua.stack.core.security.MemoryCertificateQuarantine;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.transport.server.OpcServerTransportFactory;
import org.eclipse.milo.opcua.stack.transport.server.tcp.OpcTcpServerTransport;
import org.eclipse.milo.opcua.stack.transport.server.tcp.OpcTcpServerTransportConfig;

/** A server without security on a free loopback port, the library's own or the fixed one. */
final class ServerPair implements AutoCloseable {

  private final ServerThreads threads = new ServerThreads();
  private final OpcUaServer server;
  private final String url;

  private ServerPair(BiFunction<OpcUaServerConfig, OpcServerTransportFactory, OpcUaServer> maker)
      throws IOException {
    int port = freePort();
    url = "opc.tcp://127.0.0.1:" + port;
    server =
        maker.apply(
            config(port),
            profile ->
                new OpcTcpServerTransport(
                    OpcTcpServerTransportConfig.newBuilder()
                        .setExecutor(threads.workers())
                        .build()));
  }

  /** Makes the library's own server, as it comes but for the short limits. */
  static ServerPair plain() throws IOException {
    return new ServerPair(OpcUaServer::new);
  }

  /** Makes the fixed server. */
  static ServerPair fixed() throws IOException {
    return new ServerPair(FixedServer::new);
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }

  private OpcUaServerConfig config(int port) {
    return OpcUaServerConfig.builder()
        .setApplicationName(LocalizedText.english("test"))
        .setApplicationUri("urn:strapline:test:server")
        .setProductUri("urn:strapline:test")
        .setEndpoints(
            Set.of(
                EndpointConfig.newBuilder()
                    .setBindAddress("127.0.0.1")
                    .setHostname("127.0.0.1")
                    .setBindPort(port)
                    .setPath("")
                    .build()))
        .setCertificateManager(new DefaultCertificateManager(new MemoryCertificateQuarantine()))
        .setLimits(new ServerLimits())
        .setExecutor(threads.workers())
        .setScheduledExecutor(threads.timer())
        .build();
  }

  OpcUaServer server() {
    return server;
  }

  ServerPair start() {
    server.startup().join();
    return this;
  }

  OpcUaClient client() throws UaException {
    OpcUaClient client =
        OpcUaClient.create(
            url,
            endpoints -> endpoints.stream().findFirst(),
            transport -> {},
            config ->
                config
                    .setApplicationName(LocalizedText.english("test client"))
                    .setApplicationUri("urn:strapline:test:client")
                    .setRequestTimeout(uint(2_000)));
    client.connect();
    return client;
  }

  @Override
  public void close() {
    server.shutdown().join();
    threads.close();
  }
}
