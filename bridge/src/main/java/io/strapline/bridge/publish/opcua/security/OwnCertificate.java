package io.strapline.bridge.publish.opcua.security;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.time.Period;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.eclipse.milo.opcua.stack.core.util.CertificateUtil;
import org.eclipse.milo.opcua.stack.core.util.SelfSignedCertificateBuilder;
import org.eclipse.milo.opcua.stack.core.util.SelfSignedCertificateGenerator;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The server's own certificate and private key, made at the first start and then kept. Immutable.
 */
public final class OwnCertificate {

  private static final Logger LOG = LoggerFactory.getLogger(OwnCertificate.class);

  /** The key store is guarded by its file permissions; a PKCS#12 file needs some password. */
  private static final char[] PASSWORD = "strapline".toCharArray();

  private static final String ALIAS = "server";
  private static final int KEY_BITS = 3072;
  private static final Period VALIDITY = Period.ofYears(5);
  private static final Duration EXPIRY_WARNING = Duration.ofDays(60);

  private final KeyPair keys;
  private final X509Certificate certificate;

  private OwnCertificate(KeyPair keys, X509Certificate certificate) {
    this.keys = keys;
    this.certificate = certificate;
  }

  /**
   * Reads the certificate from {@code server.p12} in the folder, or makes it there; lays a copy for
   * clients beside it, {@code server.der}.
   *
   * @throws IOException naming the file, what is wrong with it and what to do
   */
  static OwnCertificate open(Path folder, CertificateNames names) throws IOException {
    Path file = folder.resolve("server.p12");
    try {
      OwnCertificate own = Files.exists(file) ? read(file) : make(file, names);
      Files.write(folder.resolve("server.der"), own.certificate.getEncoded());
      return own;
    } catch (GeneralSecurityException | IllegalArgumentException unusable) {
      throw unusable(file, unusable);
    }
  }

  private static OwnCertificate read(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(file)) {
      store.load(in, PASSWORD);
    } catch (IOException unreadable) {
      throw unusable(file, unreadable);
    }
    PrivateKey key = (PrivateKey) store.getKey(ALIAS, PASSWORD);
    Certificate certificate = store.getCertificate(ALIAS);
    if (key == null || !(certificate instanceof X509Certificate x509)) {
      throw new IOException(file + " holds no entry " + ALIAS + ": " + FIX);
    }
    OwnerOnly.warnIfOpen(file);
    return new OwnCertificate(new KeyPair(x509.getPublicKey(), key), x509);
  }

  private static final String FIX =
      "put the right key store there, or move it away and start again: a new certificate is made,"
          + " which every client must trust anew";

  private static IOException unusable(Path file, Exception cause) {
    return new IOException(file + " cannot be used (" + cause.getMessage() + "): " + FIX, cause);
  }

  private static OwnCertificate make(Path file, CertificateNames names)
      throws IOException, GeneralSecurityException {
    KeyPair keys = SelfSignedCertificateGenerator.generateRsaKeyPair(KEY_BITS);
    X509Certificate certificate = selfSigned(keys, names);
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, PASSWORD);
    store.setKeyEntry(ALIAS, keys.getPrivate(), PASSWORD, new Certificate[] {certificate});
    Path half = OwnerOnly.createFile(file.resolveSibling("server.p12.part"));
    try (OutputStream out = Files.newOutputStream(half)) {
      store.store(out, PASSWORD);
    }
    Files.move(half, file, StandardCopyOption.ATOMIC_MOVE);
    LOG.info("OPC UA: made the server's certificate {} for {}", file, names.hosts());
    return new OwnCertificate(keys, certificate);
  }

  private static X509Certificate selfSigned(KeyPair keys, CertificateNames names)
      throws GeneralSecurityException {
    SelfSignedCertificateBuilder builder =
        new SelfSignedCertificateBuilder(keys)
            .setCommonName("Strapline " + names.plant())
            .setOrganization(names.plant())
            .setApplicationUri(names.newApplicationUri())
            .setValidityPeriod(VALIDITY);
    names.dnsNames().forEach(builder::addDnsName);
    names.addresses().forEach(builder::addIpAddress);
    try {
      return builder.build();
    } catch (GeneralSecurityException e) {
      throw e;
    } catch (Exception e) {
      throw new GeneralSecurityException(
          "no certificate can be made for the hosts " + names.hosts() + ": " + e.getMessage(), e);
    }
  }

  /** Returns the certificate. */
  public X509Certificate certificate() {
    return certificate;
  }

  KeyPair keys() {
    return keys;
  }

  /** Returns the application URI that the certificate carries; empty when it carries none. */
  public String applicationUri() {
    return CertificateUtil.getSanUri(certificate).orElse("");
  }

  /**
   * Returns what clients may object to, each with its fix: no application URI, dates, host names
   * that are missing.
   */
  List<String> problems(Instant now, List<String> hosts) {
    List<String> problems = new ArrayList<>();
    if (applicationUri().isEmpty()) {
      problems.add("carries no application URI, so clients will refuse it; " + RENEW);
    }
    addDateProblem(problems, now);
    Set<String> missing = new HashSet<>(hosts);
    missing.removeAll(CertificateUtil.getSanDnsNames(certificate));
    missing.removeAll(CertificateUtil.getSanIpAddresses(certificate));
    if (!missing.isEmpty()) {
      problems.add(
          "does not carry the hosts " + missing + ", so strict clients refuse it; " + RENEW);
    }
    return problems;
  }

  private static final String RENEW =
      "move server.p12 away and start again, then let every client trust the new certificate";

  private void addDateProblem(List<String> problems, Instant now) {
    Instant from = certificate.getNotBefore().toInstant();
    Instant to = certificate.getNotAfter().toInstant();
    if (now.isBefore(from)) {
      problems.add("is valid from " + from + " only; check the clock of this machine");
    } else if (now.isAfter(to)) {
      problems.add("expired on " + to + "; " + RENEW);
    } else if (now.plus(EXPIRY_WARNING).isAfter(to)) {
      problems.add("expires on " + to + "; " + RENEW);
    }
  }
}
