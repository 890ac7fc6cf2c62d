package io.strapline.bridge.publish.opcua.security;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import org.eclipse.milo.opcua.stack.core.security.CertificateQuarantine;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The folder in which certificates of refused clients are laid down for somebody to look at. Keeps
 * the newest {@value #MOST}. Safe for any thread.
 */
final class RejectedCertificates implements CertificateQuarantine {

  static final int MOST = 128;

  private static final Logger LOG = LoggerFactory.getLogger(RejectedCertificates.class);

  private final Path folder;

  RejectedCertificates(Path folder) {
    this.folder = folder;
  }

  /** Returns where a certificate is or would be laid down: its common name and its thumbprint. */
  Path fileOf(X509Certificate certificate) {
    String name = CertificateFiles.commonName(certificate).replaceAll("[^A-Za-z0-9._-]+", "_");
    String cut = name.length() > 64 ? name.substring(0, 64) : name;
    return folder.resolve(
        String.format(Locale.ROOT, "%s-%s.der", cut, CertificateFiles.thumbprint(certificate)));
  }

  @Override
  public List<X509Certificate> getRejectedCertificates() {
    return CertificateFiles.certificates(folder);
  }

  @Override
  public synchronized void addRejectedCertificate(X509Certificate certificate) {
    try {
      Path file = fileOf(certificate);
      if (!Files.exists(file)) {
        makeRoom();
        Files.write(file, certificate.getEncoded());
      }
    } catch (IOException | UncheckedIOException | java.security.cert.CertificateException failed) {
      LOG.warn("OPC UA: a refused certificate could not be written to {}", folder, failed);
    }
  }

  @Override
  public synchronized void removeRejectedCertificate(X509Certificate certificate) {
    try {
      Files.deleteIfExists(fileOf(certificate));
    } catch (IOException failed) {
      LOG.warn("OPC UA: {} could not be deleted", fileOf(certificate), failed);
    }
  }

  private void makeRoom() throws IOException {
    List<Path> oldestFirst;
    try (Stream<Path> files = Files.list(folder)) {
      oldestFirst = files.sorted(Comparator.comparing(RejectedCertificates::modified)).toList();
    }
    for (int i = 0; i <= oldestFirst.size() - MOST; i++) {
      Files.deleteIfExists(Objects.requireNonNull(oldestFirst.get(i)));
    }
  }

  private static long modified(Path file) {
    return file.toFile().lastModified();
  }
}
