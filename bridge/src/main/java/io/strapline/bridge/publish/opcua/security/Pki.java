package io.strapline.bridge.publish.opcua.security;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.List;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.security.CertificateManager;
import org.eclipse.milo.opcua.stack.core.security.CertificateStore;
import org.eclipse.milo.opcua.stack.core.security.DefaultApplicationGroup;
import org.eclipse.milo.opcua.stack.core.security.DefaultCertificateManager;
import org.eclipse.milo.opcua.stack.core.security.MemoryCertificateStore;
import org.eclipse.milo.opcua.stack.core.security.MemoryTrustListManager;
import org.eclipse.milo.opcua.stack.core.security.RsaSha256CertificateFactory;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The certificate folder of a server: its own certificate, the trusted and the rejected ones. The
 * folder holds {@code own}, {@code trusted/certs}, {@code trusted/crl}, {@code issuer/certs},
 * {@code issuer/crl} and {@code rejected/certs}. Immutable.
 */
public final class Pki {

  private static final Logger LOG = LoggerFactory.getLogger(Pki.class);

  private final OwnCertificate own;
  private final CertificateManager manager;

  private Pki(OwnCertificate own, CertificateManager manager) {
    this.own = own;
    this.manager = manager;
  }

  /**
   * Opens the folder, making what is missing, and tells in the log what clients may object to.
   *
   * @throws IOException naming the file or folder that cannot be used
   */
  public static Pki open(Path folder, CertificateNames names) throws IOException {
    OwnerOnly.createFolder(folder.resolve("own"));
    for (String part :
        List.of("trusted/certs", "trusted/crl", "issuer/certs", "issuer/crl", "rejected/certs")) {
      Files.createDirectories(folder.resolve(part));
    }
    OwnCertificate own = OwnCertificate.open(folder.resolve("own"), names);
    own.problems(Instant.now(), names.hosts())
        .forEach(problem -> LOG.warn("OPC UA: the server's own certificate {}", problem));
    return new Pki(own, manager(folder, own));
  }

  private static CertificateManager manager(Path folder, OwnCertificate own) throws IOException {
    RejectedCertificates rejected = new RejectedCertificates(folder.resolve("rejected/certs"));
    MemoryCertificateStore store = new MemoryCertificateStore();
    try {
      store.set(
          NodeIds.RsaSha256ApplicationCertificateType,
          new CertificateStore.Entry(
              own.keys().getPrivate(), new X509Certificate[] {own.certificate()}));
      DefaultApplicationGroup group =
          new DefaultApplicationGroup(
              new MemoryTrustListManager(),
              store,
              noOther(own),
              new ClientCertificates(folder, rejected));
      group.initialize();
      return new DefaultCertificateManager(rejected, group);
    } catch (Exception unexpected) {
      throw new IOException("the certificate in " + folder + " cannot be used", unexpected);
    }
  }

  /** The store is filled already, so this is never asked for a new certificate. */
  private static RsaSha256CertificateFactory noOther(OwnCertificate own) {
    return new RsaSha256CertificateFactory() {
      @Override
      protected X509Certificate[] createRsaSha256CertificateChain(java.security.KeyPair keys) {
        return new X509Certificate[] {own.certificate()};
      }
    };
  }

  /** Returns the server's own certificate. */
  public OwnCertificate own() {
    return own;
  }

  /** Returns what the server asks for certificates and trust. */
  public CertificateManager manager() {
    return manager;
  }
}
