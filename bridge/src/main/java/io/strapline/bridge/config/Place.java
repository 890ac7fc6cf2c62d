package io.strapline.bridge.config;

import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * Where something stands in a configuration file. Immutable.
 *
 * @param line from 1, or 0 for the whole file
 * @param column from 1, or 0 for the whole line
 * @param key path of the key
 * @param value text that stands there; empty for a mapping, a list or nothing
 */
record Place(int line, int column, String key, String value) {

  /** Longest piece of a value that a message repeats. */
  private static final int LONGEST_VALUE = 60;

  /** Shortens a long value and makes control characters visible as blanks. */
  Place {
    String plain = value.replaceAll("\\p{Cntrl}+", " ").strip();
    value = plain.length() > LONGEST_VALUE ? plain.substring(0, LONGEST_VALUE) + "..." : plain;
  }

  /** Returns the place of a node. */
  static Place of(Node node, String key) {
    return of(node.getStartMark(), key, node instanceof ScalarNode scalar ? scalar.getValue() : "");
  }

  /** Returns this place under another key, without a value. */
  Place at(String otherKey) {
    return new Place(line, column, otherKey, "");
  }

  /** Returns the place of a mark; marks count from zero. */
  static Place of(Optional<Mark> mark, String key, String value) {
    int line = mark.map(Mark::getLine).orElse(-1) + 1;
    int column = mark.map(Mark::getColumn).orElse(-1) + 1;
    return new Place(line, column, key, value);
  }
}
