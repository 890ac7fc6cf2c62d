package io.strapline.bridge.publish.opcua;

import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.ubyte;
import static org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.Unsigned.uint;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.publish.opcua.VariableSpec.Label;
import io.strapline.bridge.publish.opcua.alarms.ConditionSpec;
import io.strapline.bridge.publish.opcua.alarms.Conditions;
import io.strapline.bridge.publish.opcua.conditions.ConditionHost;
import io.strapline.bridge.publish.opcua.conditions.ConditionPublisher;
import io.strapline.bridge.publish.opcua.server.FixedServer;
import io.strapline.bridge.publish.opcua.server.PushNamespace;
import io.strapline.level.point.PointSnapshot;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.milo.opcua.sdk.core.Reference;
import org.eclipse.milo.opcua.sdk.server.Session;
import org.eclipse.milo.opcua.sdk.server.nodes.UaNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaObjectNode;
import org.eclipse.milo.opcua.sdk.server.nodes.UaVariableNode;
import org.eclipse.milo.opcua.stack.core.NodeIds;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.builtin.NodeId;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UByte;
import org.eclipse.milo.opcua.stack.core.types.builtin.unsigned.UShort;

/**
 * The points of a plant: a folder for the plant, one for each area, an object for each point. Safe
 * for any thread once it is started.
 */
final class PointNamespace extends PushNamespace {

  private static final UByte SUBSCRIBE_TO_EVENTS = ubyte(1);

  private final PlantSettings plant;
  private final TypeNamespace types;
  private final Map<String, PublishedPoint> points = new LinkedHashMap<>();
  private final ConditionPublisher conditions;
  private final Conditions engine;

  PointNamespace(
      FixedServer server,
      PlantSettings plant,
      TypeNamespace types,
      Function<Session, Optional<String>> operators,
      Function<Conditions.Listener, Conditions> engine) {
    super(server, NodeList.NAMESPACE);
    this.plant = plant;
    this.types = types;
    conditions =
        new ConditionPublisher(
            new ConditionHost(
                getNodeContext(),
                this::addPushed,
                this::push,
                StatusMapping::of,
                new ConditionHost.Rights(operators, server.getEventNotifier())));
    this.engine = engine.apply(conditions);
    getLifecycleManager().addStartupTask(this::build);
  }

  private void build() {
    Nodes nodes = new Nodes(getNodeContext(), getNamespaceIndex(), types.getNamespaceIndex());
    UaObjectNode root = nodes.object(NodeList.PLANT, plant.name(), NodeIds.FolderType);
    root.addReference(
        new Reference(
            root.getNodeId(), NodeIds.Organizes, NodeIds.ObjectsFolder.expanded(), false));
    addHeartbeat(nodes, root);
    Map<String, UaObjectNode> areas = new LinkedHashMap<>();
    for (PointConfig point : plant.points()) {
      UaObjectNode area = areas.computeIfAbsent(point.area(), name -> addArea(nodes, root, name));
      addPoint(nodes, area, point);
    }
    conditions.serve(engine);
  }

  private void addHeartbeat(Nodes nodes, UaObjectNode root) {
    Label label = new Label("Heartbeat", "Rises by one each second while the server lives");
    VariableSpec spec =
        new VariableSpec(
            "Heartbeat",
            label,
            ValueType.UINT32,
            Optional.empty(),
            snapshot -> Values.good(uint(0), snapshot.evaluated()));
    UaVariableNode node = nodes.variable(NodeList.HEARTBEAT, spec);
    Nodes.link(root, NodeIds.HasComponent, node);
    addPushed(node);
  }

  /** Makes an area; whoever watches it is told the events of its points. */
  private UaObjectNode addArea(Nodes nodes, UaObjectNode root, String name) {
    UaObjectNode area = nodes.object(NodeList.AREA_PREFIX + name, name, NodeIds.FolderType);
    Nodes.link(root, NodeIds.Organizes, area);
    area.setEventNotifier(SUBSCRIBE_TO_EVENTS);
    getServer()
        .getAddressSpaceManager()
        .getManagedNode(NodeIds.Server)
        .ifPresent(server -> Nodes.link(server, NodeIds.HasNotifier, area));
    return area;
  }

  private void addPoint(Nodes nodes, UaObjectNode area, PointConfig point) {
    UaObjectNode object = nodes.object(point.tag(), point.tag(), types.typeId());
    object.setDescription(LocalizedText.english(point.title()));
    Nodes.link(area, NodeIds.Organizes, object);
    Nodes.link(area, NodeIds.HasEventSource, object);
    PublishedPoint published = new PublishedPoint(point, this::push);
    Map<String, UaNode> made = new LinkedHashMap<>(Map.of("", object));
    for (VariableSpec spec : published.specs()) {
      UaVariableNode node = nodes.variable(point.tag() + "." + spec.path(), spec);
      Nodes.link(parent(nodes, made, point.tag(), spec.parent()), NodeIds.HasComponent, node);
      made.put(spec.path(), node);
      addPushed(node);
      published.add(spec, node.getNodeId());
    }
    points.put(point.tag(), published);
    UShort names = types.getNamespaceIndex();
    ConditionSpec.of(point).forEach(spec -> conditions.build(spec, object, area, names));
    conditions.serve(engine, object, point.tag(), names);
  }

  /** Returns the node above a variable, making folders on the way as they are met. */
  private static UaNode parent(Nodes nodes, Map<String, UaNode> made, String tag, String path) {
    UaNode there = made.get(path);
    if (there != null) {
      return there;
    }
    int dot = path.lastIndexOf('.');
    UaObjectNode folder =
        nodes.object(tag + "." + path, path.substring(dot + 1), NodeIds.FolderType);
    UaNode above = parent(nodes, made, tag, dot < 0 ? "" : path.substring(0, dot));
    Nodes.link(above, NodeIds.HasComponent, folder);
    made.put(path, folder);
    return folder;
  }

  /** Publishes the newest snapshot of a point. */
  void update(PointSnapshot snapshot) {
    PublishedPoint point = points.get(snapshot.tag());
    if (point != null) {
      point.update(snapshot);
    }
  }

  /** Publishes the heartbeat and the ages, which go on between snapshots. */
  void beat(long count, Instant now) {
    NodeId heartbeat = newNodeId(NodeList.HEARTBEAT);
    push(heartbeat, Values.good(uint(count & 0xFFFFFFFFL), now));
    points.values().forEach(PublishedPoint::age);
  }
}
