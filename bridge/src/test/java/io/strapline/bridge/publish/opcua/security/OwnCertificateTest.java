package io.strapline.bridge.publish.opcua.security;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.interfaces.RSAPublicKey;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.eclipse.milo.opcua.stack.core.util.CertificateUtil;
import org.eclipse.milo.opcua.stack.core.util.validation.CertificateValidationUtil;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OwnCertificateTest {

  private static final CertificateNames NAMES =
      CertificateNames.of("Kestrel Quay", "127.0.0.1", List.of("scada.kestrel", "10.1.2.3"));

  @TempDir Path folder;

  @Test
  void isMadeOnceAndCarriesAllNames() throws Exception {
    OwnCertificate own = OwnCertificate.open(folder, NAMES);
    assertTrue(own.applicationUri().endsWith(":strapline:bridge:kestrel-quay"));
    assertTrue(CertificateUtil.getSanDnsNames(own.certificate()).contains("scada.kestrel"));
    assertTrue(
        CertificateUtil.getSanIpAddresses(own.certificate())
            .containsAll(List.of("127.0.0.1", "10.1.2.3")));
    assertEquals(3072, ((RSAPublicKey) own.certificate().getPublicKey()).getModulus().bitLength());
    CertificateValidationUtil.checkEndEntityKeyUsage(own.certificate());
    CertificateValidationUtil.checkEndEntityExtendedKeyUsage(own.certificate(), false);
    assertEquals(List.of(), own.problems(Instant.now(), NAMES.hosts()));

    OwnCertificate again = OwnCertificate.open(folder, NAMES);
    assertEquals(own.certificate(), again.certificate());
    assertEquals(own.keys().getPrivate(), again.keys().getPrivate());
  }

  @Test
  void keepsItsKeyFromOtherUsers() throws Exception {
    OwnCertificate.open(folder, NAMES);
    Path file = folder.resolve("server.p12");
    Assumptions.assumeTrue(file.getFileSystem().supportedFileAttributeViews().contains("posix"));
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
  }

  @Test
  void namesTheFileThatCannotBeUsed() throws Exception {
    Path file = folder.resolve("server.p12");
    Files.writeString(file, "not a key store");
    IOException refused = assertThrows(IOException.class, () -> OwnCertificate.open(folder, NAMES));
    String message = String.valueOf(refused.getMessage());
    assertTrue(message.startsWith(file + " cannot be used"), message);
    assertTrue(message.contains("move it away"), message);
    assertEquals("not a key store", Files.readString(file), "nothing is overwritten");
  }

  @Test
  void warnsOfDatesAndMissingHosts() throws Exception {
    OwnCertificate own = OwnCertificate.open(folder, NAMES);
    Instant end = own.certificate().getNotAfter().toInstant();
    assertTrue(problem(own, end.minus(Duration.ofDays(59))).startsWith("expires on"));
    assertTrue(problem(own, end.plusSeconds(1)).startsWith("expired on"));
    assertTrue(problem(own, Instant.EPOCH).contains("check the clock"));
    List<String> missing = own.problems(Instant.now(), List.of("plc.kestrel"));
    assertTrue(missing.get(0).contains("[plc.kestrel]"), missing.toString());
  }

  private static String problem(OwnCertificate own, Instant now) {
    return own.problems(now, List.of()).get(0);
  }

  @Test
  void namesNoWildcardAddress() {
    CertificateNames names = CertificateNames.of("P", "0.0.0.0", List.of());
    assertEquals(List.of(), names.addresses());
    assertNotEquals(List.of(), names.dnsNames());
  }
}
