package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * Takes YAML nodes for what they should be; notes a problem where they are not. Not thread-safe.
 *
 * @param problems takes the problems
 */
record Nodes(Problems problems) {

  /** Returns the path of a key in a section; the path of the root is empty. */
  static String join(String path, String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** Returns whether a value is not given: a key with nothing after it. */
  static boolean isBlank(Node value) {
    return value instanceof ScalarNode scalar && scalar.getValue().isBlank();
  }

  /**
   * Returns the node of a key, whose mark tells where it stands; the mapping when there is none.
   */
  static Node keyNode(MappingNode mapping, String key) {
    for (NodeTuple tuple : mapping.getValue()) {
      if (keyOf(tuple).equals(key)) {
        return tuple.getKeyNode();
      }
    }
    return mapping;
  }

  private static String keyOf(NodeTuple tuple) {
    return tuple.getKeyNode() instanceof ScalarNode scalar ? scalar.getValue() : "?";
  }

  /** Returns the entries of a mapping by key, duplicates noted and left out. */
  Map<String, Node> entries(MappingNode mapping, String path) {
    Map<String, Node> entries = new LinkedHashMap<>();
    for (NodeTuple tuple : mapping.getValue()) {
      String key = keyOf(tuple);
      if (entries.putIfAbsent(key, tuple.getValueNode()) != null) {
        problems.error(
            Place.of(tuple.getKeyNode().getStartMark(), join(path, key), ""),
            Reason.CONFLICT,
            "is given twice",
            "keep one of the two");
      }
    }
    return entries;
  }

  /** Returns a single value with its place. */
  Optional<Scalar> scalar(Node value, String path) {
    Place place = Place.of(value, path);
    if (value instanceof ScalarNode scalar) {
      return Optional.of(new Scalar(scalar.getValue().strip(), place, problems));
    }
    problems.error(place, Reason.MALFORMED, "is not a single value", "write one value here");
    return Optional.empty();
  }

  /** Returns a mapping. */
  Optional<MappingNode> mapping(Node value, String path) {
    if (value instanceof MappingNode mapping) {
      return Optional.of(mapping);
    }
    problems.error(
        Place.of(value, path),
        Reason.MALFORMED,
        "is no group of keys",
        "write `key: value` lines below it, indented");
    return Optional.empty();
  }

  /** Returns the items of a list. */
  List<Node> items(Node value, String path) {
    if (value instanceof SequenceNode sequence) {
      return sequence.getValue();
    }
    problems.error(
        Place.of(value, path),
        Reason.MALFORMED,
        "is no list",
        "write [ ] around it, items parted by commas");
    return List.of();
  }
}
