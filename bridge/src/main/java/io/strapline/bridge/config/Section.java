package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * One mapping of a configuration file and the keys that it may hold. Every getter notes what is
 * wrong and goes on with a placeholder; {@link #build} makes the object only when nothing was. Not
 * thread-safe.
 */
final class Section {

  private final MappingNode node;
  private final Keys keys;
  private final String path;
  private final Problems problems;
  private final Nodes nodes;
  private final Map<String, Node> values;

  private Section(MappingNode node, Keys keys, String path, Problems problems) {
    this.node = node;
    this.keys = keys;
    this.path = path;
    this.problems = problems;
    nodes = new Nodes(problems);
    values = nodes.entries(node, path);
    values.forEach(this::refuseUnknown);
  }

  /** Opens a mapping; duplicate and unknown keys are noted at once. */
  static Section of(MappingNode node, Keys keys, String path, Problems problems) {
    return new Section(node, keys, path, problems);
  }

  private void refuseUnknown(String key, Node value) {
    if (!keys.names().contains(key)) {
      problems.error(
          Place.of(Nodes.keyNode(node, key).getStartMark(), join(key), ""),
          Reason.UNKNOWN_KEY,
          "is no key of this section",
          keys.adviceFor(key));
    }
  }

  /** Returns whether the key is given with a value. */
  boolean has(String key) {
    return value(key).isPresent();
  }

  /** Returns the value of a key as text with its place; a list or mapping is a problem. */
  Optional<Scalar> scalar(String key) {
    return value(key).flatMap(value -> nodes.scalar(value, join(key)));
  }

  private Optional<Scalar> required(String key, String what) {
    if (!has(key)) {
      missing(key, what);
      return Optional.empty();
    }
    return scalar(key);
  }

  /** Returns a required text, empty after a problem. */
  String text(String key, String what) {
    return required(key, what).map(Scalar::text).orElse("");
  }

  /** Returns a text or its default. */
  String textOr(String key, String fallback) {
    return scalar(key).map(Scalar::text).orElse(fallback);
  }

  /** Returns a required quantity, NaN after a problem. */
  double quantity(String key, Dimension dimension) {
    return required(key, Scalar.example(dimension))
        .map(scalar -> scalar.quantity(dimension))
        .orElse(Double.NaN);
  }

  /** Returns a quantity or its default. */
  double quantityOr(String key, Dimension dimension, double fallback) {
    return optionalQuantity(key, dimension).orElse(fallback);
  }

  /** Returns a quantity if it is given. */
  OptionalDouble optionalQuantity(String key, Dimension dimension) {
    Optional<Double> quantity = scalar(key).map(scalar -> scalar.quantity(dimension));
    return quantity.map(OptionalDouble::of).orElseGet(OptionalDouble::empty);
  }

  /** Returns a required whole number in [low, high]. */
  int integer(String key, int low, int high) {
    String what = "a whole number from " + low + " to " + high;
    return required(key, what).map(scalar -> scalar.integer(low, high)).orElse(low);
  }

  /** Returns a whole number in [low, high] if it is given. */
  OptionalInt optionalInteger(String key, int low, int high) {
    Optional<Integer> number = scalar(key).map(scalar -> scalar.integer(low, high));
    return number.map(OptionalInt::of).orElseGet(OptionalInt::empty);
  }

  /** Returns a required number without a unit, NaN after a problem. */
  double number(String key) {
    return required(key, "a number").map(Scalar::number).orElse(Double.NaN);
  }

  /** Returns a flag or its default. */
  boolean flagOr(String key, boolean fallback) {
    return scalar(key).map(Scalar::flag).orElse(fallback);
  }

  /** Returns a required word. */
  <E extends Enum<E>> E choice(String key, List<E> among) {
    String what = "one of " + String.join(", ", Labels.of(among));
    return required(key, what).map(scalar -> scalar.choice(among)).orElse(among.get(0));
  }

  /** Returns a word or its default. */
  <E extends Enum<E>> E choiceOr(String key, List<E> among, E fallback) {
    return scalar(key).map(scalar -> scalar.choice(among)).orElse(fallback);
  }

  /** Returns a list of single values; empty when it is not given. */
  List<Scalar> list(String key) {
    return items(key, nodes::scalar);
  }

  /** Returns a list of sections; empty when it is not given. */
  List<Section> sections(String key, Keys of) {
    return items(key, (item, at) -> child(item, of, at));
  }

  private <T> List<T> items(String key, BiFunction<Node, String, Optional<T>> reader) {
    List<T> items = new ArrayList<>();
    List<Node> list = value(key).map(value -> nodes.items(value, join(key))).orElse(List.of());
    for (int i = 0; i < list.size(); i++) {
      reader.apply(list.get(i), join(key) + "[" + i + "]").ifPresent(items::add);
    }
    return items;
  }

  /** Returns a section if it is given. */
  Optional<Section> section(String key, Keys of) {
    return value(key).flatMap(value -> child(value, of, join(key)));
  }

  /** Returns a required section; empty after a problem. */
  Optional<Section> requiredSection(String key, Keys of, String what) {
    if (!has(key)) {
      missing(key, what);
    }
    return section(key, of);
  }

  /** Opens a node of this file as a section. */
  Optional<Section> child(Node value, Keys of, String at) {
    return nodes.mapping(value, at).map(mapping -> of(mapping, of, at, problems));
  }

  /** Returns a mapping whose keys are free, such as the tags of points. */
  Optional<MappingNode> mapping(String key) {
    return value(key).flatMap(value -> nodes.mapping(value, join(key)));
  }

  /** Returns the one key of the section that is given; notes a problem for none or several. */
  Optional<String> one(List<String> among) {
    List<String> given = among.stream().filter(this::has).toList();
    if (given.size() == 1) {
      return Optional.of(given.get(0));
    }
    if (given.isEmpty() && problems.soundBelow(path)) {
      problems.error(
          Place.of(node, path),
          Reason.MISSING,
          "is empty",
          "give one of " + String.join(", ", among));
    } else if (given.size() > 1) {
      error(given.get(1), Reason.CONFLICT, "stands beside " + given.get(0), "keep one of the two");
    }
    return Optional.empty();
  }

  /** Notes an error at a key. */
  void error(String key, Reason reason, String rule, String fix) {
    problems.error(place(key), reason, rule, fix);
  }

  /** Notes a warning at a key. */
  void warn(String key, Reason reason, String rule, String fix) {
    problems.warn(place(key), reason, rule, fix);
  }

  /** Returns the place of a key's value, or of the section when the key is not given. */
  Place place(String key) {
    return value(key)
        .map(value -> Place.of(value, join(key)))
        .orElseGet(() -> Place.of(node.getStartMark(), join(key), ""));
  }

  /** Returns the path of the section. */
  String path() {
    return path;
  }

  /** Returns the collection of problems. */
  Problems problems() {
    return problems;
  }

  /** Returns whether no error stands in this section. */
  boolean isSound() {
    return problems.soundBelow(path);
  }

  /**
   * Makes an object of the section's values; empty when the section has an error. An argument error
   * of the library is noted at the key of the field it names.
   */
  <T> Optional<T> build(Supplier<T> maker) {
    if (!isSound()) {
      return Optional.empty();
    }
    try {
      return Optional.of(maker.get());
    } catch (IllegalArgumentException refused) {
      note(LibraryError.of(refused));
      return Optional.empty();
    }
  }

  private void note(LibraryError error) {
    Optional<String> key = error.key(keys);
    String rule = key.isPresent() ? error.rule() : (error.value() + " " + error.rule()).strip();
    Place place = key.map(this::place).orElseGet(() -> Place.of(node, path));
    problems.error(place, Reason.OUT_OF_RANGE, rule, error.fix("correct the value"));
  }

  private void missing(String key, String what) {
    Place place = Place.of(Nodes.keyNode(node, key).getStartMark(), join(key), "");
    problems.error(place, Reason.MISSING, "is missing", "give " + what);
  }

  private Optional<Node> value(String key) {
    if (!keys.names().contains(key)) {
      throw new IllegalStateException(key + " is not declared in Keys." + keys);
    }
    return Optional.ofNullable(values.get(key)).filter(value -> !Nodes.isBlank(value));
  }

  private String join(String key) {
    return Nodes.join(path, key);
  }
}
