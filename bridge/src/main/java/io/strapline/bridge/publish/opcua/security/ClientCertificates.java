package io.strapline.bridge.publish.opcua.security;

import static org.eclipse.milo.opcua.stack.core.util.validation.CertificateValidationUtil.buildTrustedCertPath;
import static org.eclipse.milo.opcua.stack.core.util.validation.CertificateValidationUtil.checkApplicationUri;
import static org.eclipse.milo.opcua.stack.core.util.validation.CertificateValidationUtil.validateTrustedCertPath;

import java.nio.file.Path;
import java.security.cert.CertificateParsingException;
import java.security.cert.PKIXCertPathBuilderResult;
import java.security.cert.X509CRL;
import java.security.cert.X509Certificate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.security.CertificateValidator;
import org.eclipse.milo.opcua.stack.core.types.builtin.StatusCode;
import org.eclipse.milo.opcua.stack.core.util.validation.ValidationCheck;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Judges the certificates of clients against the folder of trusted ones: trust, dates, revocation,
 * key usage and application URI. The folders are read at every judgement, which is rare, so a moved
 * file counts at once, on network mounts too. The library's own validator checks neither dates nor
 * revocation unless told so, and hides the reason of a refusal. Safe for any thread.
 */
final class ClientCertificates implements CertificateValidator {

  private static final Logger LOG = LoggerFactory.getLogger(ClientCertificates.class);
  private static final int MOST_TOLD = 1_000;

  private final Path folder;
  private final RejectedCertificates rejected;
  private final Set<String> told = Collections.synchronizedSet(newestOnly());

  /** Judges by {@code trusted} and {@code issuer} in the folder. */
  ClientCertificates(Path folder, RejectedCertificates rejected) {
    this.folder = folder;
    this.rejected = rejected;
  }

  private static Set<String> newestOnly() {
    return Collections.newSetFromMap(
        new LinkedHashMap<>() {
          private static final long serialVersionUID = 1;

          @Override
          protected boolean removeEldestEntry(Map.Entry<String, Boolean> eldest) {
            return size() > MOST_TOLD;
          }
        });
  }

  @Override
  public void validateCertificateChain(
      List<X509Certificate> chain, @Nullable String applicationUri, String @Nullable [] hosts)
      throws UaException {
    if (chain.isEmpty()) {
      throw new UaException(StatusCodes.Bad_SecurityChecksFailed, "no client certificate");
    }
    X509Certificate client = chain.get(0);
    PKIXCertPathBuilderResult path = trustedPath(chain);
    try {
      validateTrustedCertPath(
          path.getCertPath(), path.getTrustAnchor(), revocationLists(), checksFor(client), true);
      if (applicationUri != null) {
        checkApplicationUri(client, applicationUri);
      }
    } catch (UaException failed) {
      throw refused(client, failed);
    }
  }

  private PKIXCertPathBuilderResult trustedPath(List<X509Certificate> chain) throws UaException {
    try {
      return buildTrustedCertPath(
          chain,
          CertificateFiles.certificates(folder.resolve("trusted/certs")),
          CertificateFiles.certificates(folder.resolve("issuer/certs")));
    } catch (UaException untrusted) {
      chain.forEach(rejected::addRejectedCertificate);
      tellUntrusted(chain.get(0));
      // Clients are not told whether a certificate is merely unknown (OPC 10000-4, 6.1.3).
      throw new UaException(StatusCodes.Bad_SecurityChecksFailed, untrusted);
    }
  }

  private List<X509CRL> revocationLists() {
    List<X509CRL> lists = new ArrayList<>();
    lists.addAll(CertificateFiles.revocationLists(folder.resolve("trusted/crl")));
    lists.addAll(CertificateFiles.revocationLists(folder.resolve("issuer/crl")));
    return lists;
  }

  /**
   * Returns the checks for one certificate. Many clients make themselves a certificate without the
   * usage extensions; somebody who laid exactly this certificate into the trusted folder has
   * decided, so their absence is borne with. An extension that is there must allow the use, and
   * certificates of an authority must carry both.
   */
  static Set<ValidationCheck> checksFor(X509Certificate client) {
    EnumSet<ValidationCheck> checks =
        EnumSet.of(
            ValidationCheck.VALIDITY,
            ValidationCheck.REVOCATION,
            ValidationCheck.KEY_USAGE_END_ENTITY,
            ValidationCheck.EXTENDED_KEY_USAGE_END_ENTITY,
            ValidationCheck.APPLICATION_URI);
    boolean selfSigned = client.getIssuerX500Principal().equals(client.getSubjectX500Principal());
    if (selfSigned && client.getKeyUsage() == null) {
      checks.remove(ValidationCheck.KEY_USAGE_END_ENTITY);
    }
    if (selfSigned && !hasExtendedKeyUsage(client)) {
      checks.remove(ValidationCheck.EXTENDED_KEY_USAGE_END_ENTITY);
    }
    return checks;
  }

  private static boolean hasExtendedKeyUsage(X509Certificate client) {
    try {
      return client.getExtendedKeyUsage() != null;
    } catch (CertificateParsingException garbled) {
      return true;
    }
  }

  private void tellUntrusted(X509Certificate client) {
    if (told.add("untrusted " + CertificateFiles.thumbprint(client))) {
      LOG.warn(
          "OPC UA: client certificate '{}' is not trusted. To let this client in, check the"
              + " thumbprint {} with its owner and move the file {} to the folder {}; no restart is"
              + " needed.",
          CertificateFiles.commonName(client),
          CertificateFiles.thumbprint(client),
          rejected.fileOf(client),
          folder.resolve("trusted/certs"));
    }
  }

  private UaException refused(X509Certificate client, UaException reason) {
    StatusCode status = reason.getStatusCode();
    if (told.add(status + CertificateFiles.thumbprint(client))) {
      LOG.warn(
          "OPC UA: trusted client certificate '{}' (thumbprint {}) is refused: {}{}",
          CertificateFiles.commonName(client),
          CertificateFiles.thumbprint(client),
          name(status),
          detail(client, reason));
    }
    boolean revoked =
        status.value() == StatusCodes.Bad_CertificateRevoked
            || status.value() == StatusCodes.Bad_CertificateIssuerRevoked;
    return revoked ? new UaException(StatusCodes.Bad_SecurityChecksFailed, reason) : reason;
  }

  private static String name(StatusCode status) {
    return StatusCodes.lookup(status.value()).map(text -> text[0]).orElse(status.toString());
  }

  private static String detail(X509Certificate client, UaException reason) {
    if (reason.getStatusCode().value() == StatusCodes.Bad_CertificateTimeInvalid) {
      return ", valid from "
          + client.getNotBefore().toInstant()
          + " to "
          + client.getNotAfter().toInstant();
    }
    return reason.getMessage() == null ? "" : ", " + reason.getMessage();
  }
}
