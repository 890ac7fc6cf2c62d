package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.publish.opcua.server.PushNamespace;
import io.strapline.level.point.Mounting;
import io.strapline.level.point.PointSettings;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.eclipse.milo.opcua.sdk.core.Reference;
import org.eclipse.milo.opcua.sdk.server.OpcUaServer;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectTypeNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.QualifiedName;

/** The type of a measuring point, on which clients can build their pictures and tables. */
final class TypeNamespace extends PushNamespace {

  private static final String TYPE = "MeasuringPointType";

  TypeNamespace(OpcUaServer server) {
    super(server, NodeList.TYPE_NAMESPACE);
    getLifecycleManager().addStartupTask(this::build);
  }

  /** Returns the node of the type. */
  NodeId typeId() {
    return newNodeId(TYPE);
  }

  private void build() {
    UaObjectTypeNode type =
        UaObjectTypeNode.builder(getNodeContext())
            .setNodeId(typeId())
            .setBrowseName(new QualifiedName(getNamespaceIndex(), TYPE))
            .setDisplayName(LocalizedText.english(TYPE))
            .setDescription(LocalizedText.english("A measuring point for level or position"))
            .setIsAbstract(false)
            .build();
    getNodeManager().addNode(type);
    type.addReference(
        new Reference(
            type.getNodeId(), NodeIds.HasSubtype, NodeIds.BaseObjectType.expanded(), false));
    declare(type);
    getServer().updateObjectTypeTree();
  }

  /** Declares what every point has as mandatory and what the configuration adds as optional. */
  private void declare(UaObjectTypeNode type) {
    Nodes nodes = new Nodes(getNodeContext(), getNamespaceIndex(), getNamespaceIndex());
    Set<String> always =
        PointVariables.of(PointSettings.builder(TYPE).mounting(Mounting.plumb(1)).build()).stream()
            .map(VariableSpec::path)
            .collect(Collectors.toCollection(HashSet::new));
    for (VariableSpec spec : declared()) {
      if (spec.parent().isEmpty()) {
        UaNode member = nodes.variable(TYPE + "." + spec.path(), spec);
        Nodes.link(type, NodeIds.HasComponent, member);
        addRule(member, always.contains(spec.path()));
      }
    }
    UaNode alarms =
        nodes.object(TYPE + "." + AlarmVariables.FOLDER, AlarmVariables.FOLDER, NodeIds.FolderType);
    Nodes.link(type, NodeIds.HasComponent, alarms);
    addRule(alarms, true);
  }

  private static List<VariableSpec> declared() {
    return PointVariables.of(FullPoint.settings(TYPE));
  }

  private static void addRule(UaNode member, boolean mandatory) {
    NodeId rule = mandatory ? NodeIds.ModellingRule_Mandatory : NodeIds.ModellingRule_Optional;
    member.addReference(
        new Reference(member.getNodeId(), NodeIds.HasModellingRule, rule.expanded(), true));
  }
}
