package io.strapline.bridge.publish.opcua;

import io.strapline.level.point.PointSnapshot;
import java.util.Optional;
import java.util.function.Function;
import org.eclipse.milo.opcua.stack.core.types.builtin.DataValue;

/**
 * One published variable of a measuring point: the one place that says what it is called, what it
 * means and where its value comes from. Immutable.
 *
 * @param path below the tag, such as {@code Level.LastGood}; fixed for ever, since clients keep it
 * @param label how it is called and explained to people
 * @param type data type
 * @param scale unit and ranges, for analog values
 * @param value takes the value out of a snapshot
 */
record VariableSpec(
    String path,
    Label label,
    ValueType type,
    Optional<Scale> scale,
    Function<PointSnapshot, DataValue> value) {

  /**
   * What people read.
   *
   * @param title a few trade words
   * @param description a sentence
   */
  record Label(String title, String description) {}

  static VariableSpec plain(
      String path, ValueType type, Label label, Function<PointSnapshot, DataValue> value) {
    return new VariableSpec(path, label, type, Optional.empty(), value);
  }

  static VariableSpec analog(
      String path, Scale scale, Label label, Function<PointSnapshot, DataValue> value) {
    return new VariableSpec(path, label, ValueType.DOUBLE, Optional.of(scale), value);
  }

  /** Returns the last part of the path. */
  String name() {
    return path.substring(path.lastIndexOf('.') + 1);
  }

  /** Returns the path without its last part; empty for a variable directly below the tag. */
  String parent() {
    return path.contains(".") ? path.substring(0, path.lastIndexOf('.')) : "";
  }
}
