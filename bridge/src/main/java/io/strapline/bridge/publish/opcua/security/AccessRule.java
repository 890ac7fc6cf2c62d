package io.strapline.bridge.publish.opcua.security;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.eclipse.milo.opcua.sdk.server.RoleMapper;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.identity.AbstractIdentityValidator;
import org.eclipse.milo.opcua.sdk.server.identity.DefaultAnonymousIdentity;
import org.eclipse.milo.opcua.sdk.server.identity.Identity;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.StatusCodes;
import org.eclipse.milo.opcua.stack.core.UaException;
import org.eclipse.milo.opcua.stack.core.security.SecurityPolicy;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.enumerated.MessageSecurityMode;
import org.eclipse.milo.opcua.stack.core.types.enumerated.UserTokenType;
import org.eclipse.milo.opcua.stack.core.types.structured.AnonymousIdentityToken;
import org.eclipse.milo.opcua.stack.core.types.structured.EndpointDescription;
import org.eclipse.milo.opcua.stack.core.types.structured.SignatureData;
import org.eclipse.milo.opcua.stack.core.types.structured.UserTokenPolicy;

/**
 * Who may read and operate. There are no user names: on an encrypted channel the trusted
 * certificate of the client stands for its user, who may read and operate alarms; a channel without
 * security is served for reading only, and only if the plant allows it and the server listens on
 * this machine alone. Nobody may write. Immutable.
 */
public final class AccessRule {

  private final boolean openLocally;

  private AccessRule(boolean openLocally) {
    this.openLocally = openLocally;
  }

  /**
   * Returns the rule for a server.
   *
   * @param anonymousRead whether the plant allows reading without security
   * @param listenHost where the server listens; security is never waived unless this is a loopback
   *     address
   * @throws UnknownHostException if the host has no address
   */
  public static AccessRule of(boolean anonymousRead, String listenHost)
      throws UnknownHostException {
    return new AccessRule(anonymousRead && InetAddress.getByName(listenHost).isLoopbackAddress());
  }

  /** Returns whether clients on this machine may read without any security. */
  public boolean isOpenLocally() {
    return openLocally;
  }

  /** Returns the only way to identify oneself, under a name of its own for each policy. */
  public UserTokenPolicy tokenPolicy(SecurityPolicy policy) {
    String id = "anonymous-" + policy.name();
    return new UserTokenPolicy(id, UserTokenType.Anonymous, null, null, policy.getUri());
  }

  /** Returns what decides at the start of a session. */
  public AbstractIdentityValidator validator() {
    return new AbstractIdentityValidator() {
      @Override
      public java.util.Set<UserTokenType> getSupportedTokenTypes() {
        return java.util.Set.of(UserTokenType.Anonymous);
      }

      @Override
      protected Identity.AnonymousIdentity validateAnonymousToken(
          Session session,
          AnonymousIdentityToken token,
          UserTokenPolicy policy,
          SignatureData signature)
          throws UaException {
        boolean secured =
            session.getSecurityConfiguration().getSecurityPolicy() != SecurityPolicy.None;
        if (!secured && !openLocally) {
          throw new UaException(StatusCodes.Bad_IdentityTokenRejected);
        }
        return new DefaultAnonymousIdentity();
      }
    };
  }

  /**
   * Returns the name under which a session may operate: the common name of its client certificate,
   * trusted by now. Empty without an encrypted channel: such a session may only read.
   */
  public Optional<String> operator(Session session) {
    var security = session.getSecurityConfiguration();
    X509Certificate certificate = security.getClientCertificate();
    boolean secured =
        security.getSecurityPolicy() != SecurityPolicy.None
            && security.getSecurityMode() == MessageSecurityMode.SignAndEncrypt;
    return secured && certificate != null
        ? Optional.of(CertificateFiles.commonName(certificate))
        : Optional.empty();
  }

  /**
   * Returns the roles of a session: observer and operator with a trusted certificate, else
   * anonymous. The library checks no role at all without this.
   */
  public RoleMapper roles() {
    return new RoleMapper() {
      @Override
      public List<NodeId> getRoleIds(Identity identity) {
        return List.of(NodeIds.WellKnownRole_Anonymous);
      }

      @Override
      public List<NodeId> getRoleIds(
          Identity identity, String applicationUri, EndpointDescription endpoint) {
        boolean secured =
            !Objects.equals(endpoint.getSecurityPolicyUri(), SecurityPolicy.None.getUri());
        return secured
            ? List.of(
                NodeIds.WellKnownRole_Anonymous,
                NodeIds.WellKnownRole_Observer,
                NodeIds.WellKnownRole_Operator)
            : getRoleIds(identity);
      }
    };
  }
}
