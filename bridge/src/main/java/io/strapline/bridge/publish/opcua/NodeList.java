package io.strapline.bridge.publish.opcua;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.config.PointConfig;
import io.strapline.bridge.publish.opcua.alarms.ConditionSpec;
import io.strapline.bridge.publish.opcua.conditions.ConditionPublisher;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The variables that the OPC UA server publishes for a plant. The server is built from the same
 * definition. Immutable.
 */
public final class NodeList {

  /** URI of the namespace in which all points lie; its index may change, the URI does not. */
  public static final String NAMESPACE = "urn:strapline:bridge:points";

  /** URI of the namespace of the types and of the browse names below a point. */
  public static final String TYPE_NAMESPACE = "urn:strapline:bridge:types";

  static final String PLANT = "Plant";
  static final String HEARTBEAT = PLANT + ".Heartbeat";
  static final String AREA_PREFIX = "Area.";

  private final List<Row> rows;
  private final List<Condition> conditions;

  private NodeList(List<Row> rows, List<Condition> conditions) {
    this.rows = List.copyOf(rows);
    this.conditions = List.copyOf(conditions);
  }

  /**
   * One alarm condition; its fields are those of its type in OPC 10000-9. Immutable.
   *
   * @param identifier string identifier in the namespace {@link #NAMESPACE}
   * @param type browse name of its type
   * @param description what it watches
   */
  public record Condition(String identifier, String type, String description) {}

  /**
   * One variable. Immutable.
   *
   * @param identifier string identifier in the namespace {@link #NAMESPACE}
   * @param dataType OPC UA data type, with {@code []} for an array
   * @param unit symbol of the engineering unit; empty without one
   * @param access {@code read}: nothing can be written
   * @param description what it is
   */
  public record Row(
      String identifier, String dataType, String unit, String access, String description) {

    /** Returns the node id with the namespace's URI, as OPC UA tools write it. */
    public String nodeId() {
      return "nsu=" + NAMESPACE + ";s=" + identifier;
    }
  }

  /**
   * Returns the variables of a plant: the heartbeat, then the points in the order of the file.
   *
   * @throws IllegalArgumentException if two tags give the same node id, naming it
   */
  public static NodeList of(PlantSettings plant) {
    List<Row> rows = new ArrayList<>();
    rows.add(heartbeat());
    for (PointConfig point : plant.points()) {
      PointVariables.of(point.point()).forEach(spec -> rows.add(row(point.tag(), spec)));
    }
    List<Condition> conditions =
        plant.points().stream()
            .flatMap(point -> ConditionSpec.of(point).stream())
            .map(NodeList::condition)
            .toList();
    checkUnique(plant, rows, conditions);
    return new NodeList(rows, conditions);
  }

  private static Condition condition(ConditionSpec spec) {
    return switch (spec.subject()) {
      case LEVEL ->
          new Condition(
              spec.id(), "ExclusiveLevelAlarmType", "The limits of the level, one at a time");
      case SIGNAL ->
          new Condition(
              spec.id(), "InstrumentDiagnosticAlarmType", "No signal to judge the limits by");
    };
  }

  private static Row heartbeat() {
    return new Row(
        HEARTBEAT,
        ValueType.UINT32.label(),
        "",
        "read",
        "Rises by one each second while the server lives; starts at 0 again after 4294967295");
  }

  private static Row row(String tag, VariableSpec spec) {
    return new Row(
        tag + "." + spec.path(),
        spec.type().label(),
        spec.scale().map(scale -> scale.unit().symbol()).orElse(""),
        "read",
        spec.label().description());
  }

  private static void checkUnique(PlantSettings plant, List<Row> rows, List<Condition> conditions) {
    Set<String> seen = new HashSet<>(Set.of(PLANT));
    plant.points().forEach(point -> checkNew(seen, point.tag()));
    plant.points().stream()
        .map(PointConfig::area)
        .distinct()
        .forEach(area -> checkNew(seen, AREA_PREFIX + area));
    rows.forEach(row -> checkNew(seen, row.identifier()));
    conditions.forEach(condition -> checkNew(seen, condition.identifier()));
    plant
        .points()
        .forEach(point -> checkNew(seen, point.tag() + "." + ConditionPublisher.ACKNOWLEDGE_ALL));
  }

  private static void checkNew(Set<String> seen, String identifier) {
    if (!seen.add(identifier)) {
      throw new IllegalArgumentException(
          "points: the tags give the OPC UA node id "
              + identifier
              + " twice; rename one of the points, a tag must not be the beginning of another"
              + " one's nodes");
    }
  }

  /** Returns all alarm conditions in the order of the address space. */
  public List<Condition> conditions() {
    return conditions;
  }

  /** Returns all variables in the order of the address space. */
  public List<Row> rows() {
    return rows;
  }
}
