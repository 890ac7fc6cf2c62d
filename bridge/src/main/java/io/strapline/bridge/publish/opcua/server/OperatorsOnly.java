package io.strapline.bridge.publish.opcua.server;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.nodes.UaMethodNode;
import org.eclipse.milo.opcua.sdk.server.nodes.filters.AttributeFilter;
import org.eclipse.milo.opcua.sdk.server.nodes.filters.AttributeFilterContext;
import org.eclipse.milo.opcua.stack.core.AttributeId;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.structured.PermissionType;
import org.eclipse.milo.opcua.stack.core.types.structured.RolePermissionType;
import org.jspecify.annotations.Nullable;

/**
 * Lets only operators call a method, and lets every client see whether it may. The library hands
 * out the permissions of all roles as if they were those of the session (Milo pull request 1749);
 * this leaves those of the session's roles. Immutable.
 */
public final class OperatorsOnly implements AttributeFilter {

  private static final PermissionType SEE = PermissionType.of(PermissionType.Field.Browse);
  private static final PermissionType CALL =
      PermissionType.of(PermissionType.Field.Browse, PermissionType.Field.Call);
  private static final List<RolePermissionType> PERMISSIONS =
      List.of(
          new RolePermissionType(NodeIds.WellKnownRole_Anonymous, SEE),
          new RolePermissionType(NodeIds.WellKnownRole_Observer, SEE),
          new RolePermissionType(NodeIds.WellKnownRole_Operator, CALL));

  private OperatorsOnly() {}

  /** Guards a method. */
  public static void guard(UaMethodNode method) {
    RolePermissionType[] all = PERMISSIONS.toArray(RolePermissionType[]::new);
    method.setRolePermissions(all);
    method.setUserRolePermissions(all);
    method.getFilterChain().addLast(new OperatorsOnly());
  }

  @Override
  public @Nullable Object getAttribute(AttributeFilterContext context, AttributeId attribute) {
    if (attribute == AttributeId.UserRolePermissions) {
      return permissions(context.getSession());
    }
    if (attribute == AttributeId.UserExecutable) {
      return Arrays.stream(permissions(context.getSession()))
          .anyMatch(role -> role.getPermissions().getCall());
    }
    return context.getAttribute(attribute);
  }

  private static RolePermissionType[] permissions(Optional<Session> session) {
    List<NodeId> roles = session.flatMap(Session::getRoleIds).orElse(List.of());
    return PERMISSIONS.stream()
        .filter(permission -> roles.contains(permission.getRoleId()))
        .toArray(RolePermissionType[]::new);
  }
}
