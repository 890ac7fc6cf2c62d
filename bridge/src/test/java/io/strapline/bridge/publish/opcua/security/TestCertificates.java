package io.strapline.bridge.publish.opcua.security;

import java.security.KeyPair;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import org.bouncycastle.cert.X509v3CertificateBuilder;
import org.eclipse.milo.opcua.stack.core.util.SelfSignedCertificateBuilder;
import org.eclipse.milo.opcua.stack.core.util.SelfSignedCertificateGenerator;

/** Self-signed certificates of clients, right and wrong. */
final class TestCertificates {

  static final String URI = "urn:strapline:test:client";

  private static final KeyPair KEYS = keys();

  private TestCertificates() {}

  private static KeyPair keys() {
    try {
      return SelfSignedCertificateGenerator.generateRsaKeyPair(2048);
    } catch (java.security.NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /** Makes a certificate that is valid from a year ago for some days. */
  static X509Certificate valid(String name, Duration fromNow) throws Exception {
    return make(name, fromNow, new SelfSignedCertificateGenerator());
  }

  /** Makes a valid certificate without key usage and extended key usage. */
  static X509Certificate withoutUsage(String name) throws Exception {
    return make(
        name,
        Duration.ofDays(30),
        new SelfSignedCertificateGenerator() {
          @Override
          protected void addKeyUsage(X509v3CertificateBuilder builder) {}

          @Override
          protected void addExtendedKeyUsage(X509v3CertificateBuilder builder) {}
        });
  }

  private static X509Certificate make(
      String name, Duration fromNow, SelfSignedCertificateGenerator generator) throws Exception {
    return generator.generateSelfSigned(
        KEYS,
        Date.from(Instant.now().minus(Duration.ofDays(365))),
        Date.from(Instant.now().plus(fromNow)),
        name,
        "Kestrel Quay",
        null,
        null,
        null,
        null,
        URI,
        List.of("localhost"),
        List.of(),
        SelfSignedCertificateBuilder.SA_SHA256_RSA);
  }
}
