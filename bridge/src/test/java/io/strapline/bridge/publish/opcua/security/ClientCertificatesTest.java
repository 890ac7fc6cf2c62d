package io.strapline.bridge.publish.opcua.security;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.testing.LogLines;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.util.List;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.security.DefaultServerCertificateValidator;
import org.eclipse.milo.opcua.stack.core.security.MemoryCertificateQuarantine;
import org.eclipse.milo.opcua.stack.core.security.MemoryTrustListManager;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClientCertificatesTest {

  private static final Duration MONTH = Duration.ofDays(30);

  @TempDir Path folder;

  private ClientCertificates judge;
  private RejectedCertificates rejected;

  @BeforeEach
  void makeFolders() throws IOException {
    for (String part :
        List.of("trusted/certs", "trusted/crl", "issuer/certs", "issuer/crl", "rejected/certs")) {
      Files.createDirectories(folder.resolve(part));
    }
    rejected = new RejectedCertificates(folder.resolve("rejected/certs"));
    judge = new ClientCertificates(folder, rejected);
  }

  private void trust(X509Certificate certificate) throws Exception {
    Files.write(folder.resolve("trusted/certs/client.der"), certificate.getEncoded());
  }

  private void judge(X509Certificate certificate, String uri) throws UaException {
    judge.validateCertificateChain(List.of(certificate), uri, null);
  }

  private long refusal(X509Certificate certificate, String uri) {
    return assertThrows(UaException.class, () -> judge(certificate, uri)).getStatusCode().value();
  }

  @Test
  void takesATrustedCertificate() throws Exception {
    X509Certificate client = TestCertificates.valid("viewer", MONTH);
    trust(client);
    assertDoesNotThrow(() -> judge(client, TestCertificates.URI));
  }

  @Test
  void laysAnUnknownCertificateDownAndTellsOnceWhichFileToMove() throws Exception {
    X509Certificate client = TestCertificates.valid("viewer 1", MONTH);
    try (LogLines log = new LogLines(ClientCertificates.class)) {
      assertEquals(StatusCodes.Bad_SecurityChecksFailed, refusal(client, TestCertificates.URI));
      refusal(client, TestCertificates.URI);
      Path file = rejected.fileOf(client);
      assertEquals(1, log.lines().size(), "told once: " + log.lines());
      assertTrue(log.lines().get(0).contains(file.toString()), log.lines().toString());
      assertTrue(log.lines().get(0).contains("trusted"), log.lines().toString());
      assertTrue(file.getFileName().toString().startsWith("viewer_1-"), file.toString());

      Files.move(file, folder.resolve("trusted/certs").resolve(file.getFileName()));
      assertDoesNotThrow(() -> judge(client, TestCertificates.URI), "a moved file counts at once");
    }
  }

  @Test
  void takesACertificateInPemForm() throws Exception {
    X509Certificate client = TestCertificates.valid("viewer", MONTH);
    String pem =
        "-----BEGIN CERTIFICATE-----\n"
            + java.util.Base64.getMimeEncoder().encodeToString(client.getEncoded())
            + "\n-----END CERTIFICATE-----\n";
    Files.writeString(folder.resolve("trusted/certs/a.pem"), pem, StandardCharsets.US_ASCII);
    Files.writeString(folder.resolve("trusted/certs/note.txt"), "no certificate");
    assertDoesNotThrow(() -> judge(client, TestCertificates.URI));
  }

  @Test
  void refusesATrustedCertificateThatHasExpired() throws Exception {
    X509Certificate client = TestCertificates.valid("old viewer", Duration.ofDays(-1));
    trust(client);
    try (LogLines log = new LogLines(ClientCertificates.class)) {
      assertEquals(StatusCodes.Bad_CertificateTimeInvalid, refusal(client, TestCertificates.URI));
      assertTrue(log.lines().get(0).contains("old viewer"), log.lines().toString());
      assertTrue(log.lines().get(0).contains("valid from"), log.lines().toString());
    }
  }

  @Test
  void libraryTakesAnExpiredCertificateByDefault() throws Exception {
    X509Certificate client = TestCertificates.valid("old viewer", Duration.ofDays(-1));
    MemoryTrustListManager list = new MemoryTrustListManager();
    list.addTrustedCertificate(client);
    var byDefault = new DefaultServerCertificateValidator(list, new MemoryCertificateQuarantine());
    assertDoesNotThrow(
        () -> byDefault.validateCertificateChain(List.of(client), TestCertificates.URI, null));
  }

  @Test
  void refusesATrustedCertificateOfAnotherApplication() throws Exception {
    X509Certificate client = TestCertificates.valid("viewer", MONTH);
    trust(client);
    assertEquals(StatusCodes.Bad_CertificateUriInvalid, refusal(client, "urn:another"));
  }

  @Test
  void bearsWithATrustedSelfSignedCertificateWithoutUsageExtensions() throws Exception {
    X509Certificate client = TestCertificates.withoutUsage("plain viewer");
    trust(client);
    assertDoesNotThrow(() -> judge(client, TestCertificates.URI));
  }

  @Test
  void refusesAnEmptyChain() {
    var refused =
        assertThrows(
            UaException.class, () -> judge.validateCertificateChain(List.of(), null, null));
    assertEquals(StatusCodes.Bad_SecurityChecksFailed, refused.getStatusCode().value());
  }

  @Test
  void keepsTheNewestRejectedCertificatesOnly() throws Exception {
    for (int i = 0; i < RejectedCertificates.MOST + 5; i++) {
      Files.writeString(folder.resolve("rejected/certs/" + i + ".der"), "old");
    }
    rejected.addRejectedCertificate(TestCertificates.valid("viewer", MONTH));
    try (var files = Files.list(folder.resolve("rejected/certs"))) {
      assertEquals(RejectedCertificates.MOST, files.count());
    }
  }
}
