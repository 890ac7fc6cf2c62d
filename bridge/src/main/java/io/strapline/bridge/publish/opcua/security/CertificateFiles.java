package io.strapline.bridge.publish.opcua.security;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.cert.CertificateFactory;
import java.security.cert.X509CRL;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import javax.naming.InvalidNameException;
import javax.naming.ldap.LdapName;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Reads folders of certificates and revocation lists, DER or PEM. Stateless. */
final class CertificateFiles {

  private static final Logger LOG = LoggerFactory.getLogger(CertificateFiles.class);

  private CertificateFiles() {}

  /**
   * Returns the certificates of all files in a folder; a file that is none is told and left out.
   */
  static List<X509Certificate> certificates(Path folder) {
    return read(folder, CertificateFactory::generateCertificates, X509Certificate.class);
  }

  /** Returns the revocation lists of all files in a folder. */
  static List<X509CRL> revocationLists(Path folder) {
    return read(folder, CertificateFactory::generateCRLs, X509CRL.class);
  }

  /** Returns the SHA-1 thumbprint in hexadecimal, as OPC UA tools show it. */
  static String thumbprint(X509Certificate certificate) {
    try {
      MessageDigest sha1 = MessageDigest.getInstance("SHA-1");
      return HexFormat.of().formatHex(sha1.digest(certificate.getEncoded()));
    } catch (GeneralSecurityException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /** Returns the common name of the subject, {@code unnamed} when there is none. */
  static String commonName(X509Certificate certificate) {
    try {
      return new LdapName(certificate.getSubjectX500Principal().getName())
          .getRdns().stream()
              .filter(part -> part.getType().equalsIgnoreCase("CN"))
              .map(part -> String.valueOf(part.getValue()))
              .findFirst()
              .orElse("unnamed");
    } catch (InvalidNameException odd) {
      return "unnamed";
    }
  }

  private interface Parser<R> {
    Collection<? extends R> parse(CertificateFactory factory, InputStream in)
        throws GeneralSecurityException;
  }

  private static <R, T extends R> List<T> read(Path folder, Parser<R> parser, Class<T> kind) {
    List<T> found = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        readFile(file, parser).stream()
            .filter(kind::isInstance)
            .map(kind::cast)
            .forEach(found::add);
      }
    } catch (IOException unreadable) {
      LOG.warn("OPC UA: folder {} cannot be read: {}", folder, unreadable.toString());
    }
    return found;
  }

  private static <R> Collection<? extends R> readFile(Path file, Parser<R> parser) {
    try (InputStream in = Files.newInputStream(file)) {
      return parser.parse(CertificateFactory.getInstance("X.509"), in);
    } catch (IOException | GeneralSecurityException unreadable) {
      LOG.warn("OPC UA: {} is left out, it cannot be read: {}", file, unreadable.toString());
      return List.of();
    }
  }
}
