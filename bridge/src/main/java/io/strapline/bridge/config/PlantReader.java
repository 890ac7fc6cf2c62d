package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.snakeyaml.engine.v2.nodes.MappingNode;

/** Reads a plant's configuration file. Every problem in it is found before it is refused. */
public final class PlantReader {

  /** Tags become OPC UA node identifiers and file names, so they are plain. */
  private static final Pattern TAG = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,63}");

  private static final String DATA_FOLDER = "strapline-data";

  private final Problems problems;

  private PlantReader(Path file) {
    problems = new Problems(file);
  }

  /**
   * Reads a configuration file.
   *
   * @throws ConfigException with every problem, when the file cannot be used
   */
  public static PlantFile read(Path file) throws ConfigException {
    PlantReader reader = new PlantReader(file);
    Optional<PlantSettings> plant = YamlFile.read(reader.problems).flatMap(reader::plant);
    reader.problems.throwIfAny();
    return new PlantFile(plant.orElseThrow(), reader.problems.warnings());
  }

  private Optional<PlantSettings> plant(MappingNode root) {
    Section section = Section.of(root, Keys.PLANT, "", problems);
    String name = section.text("plant", "the name of the plant");
    Path dataFolder = FileReader.folder(section, "data-folder", DATA_FOLDER);
    Optional<OpcUaSettings> opcUa = NetworkReader.opcUa(section);
    Optional<ModbusSettings> modbus = NetworkReader.modbus(section);
    NetworkReader.refuseEqualPorts(section, opcUa, modbus);
    List<PointConfig> points = points(section);
    new SerialPorts(section, modbus).check(points);
    return section.build(
        () ->
            new PlantSettings(
                name,
                problems.file(),
                dataFolder,
                opcUa.orElseThrow(),
                modbus.orElseThrow(),
                points));
  }

  private List<PointConfig> points(Section plant) {
    Map<String, Section> sections = pointSections(plant);
    List<PointConfig> points = new ArrayList<>();
    sections.forEach((tag, section) -> new PointReader(tag, section).read().ifPresent(points::add));
    refuseSharedBlocks(sections);
    if (!sections.isEmpty()) {
      ModbusAccessReader.refuseUnknownPoints(plant, sections);
    }
    return points;
  }

  private Map<String, Section> pointSections(Section plant) {
    Map<String, Section> sections = new java.util.LinkedHashMap<>();
    Optional<MappingNode> mapping = plant.mapping("points");
    mapping.ifPresent(
        node ->
            new Nodes(problems)
                .entries(node, "points")
                .forEach(
                    (tag, value) -> {
                      refuseBadTag(tag, Place.of(value, "points." + tag));
                      plant
                          .child(value, Keys.POINT, "points." + tag)
                          .ifPresent(section -> sections.put(tag, section));
                    }));
    if (mapping.map(node -> node.getValue().isEmpty()).orElse(!plant.has("points"))) {
      plant.error(
          "points", Reason.MISSING, "has no measuring point", "give at least one, by its tag");
    }
    return sections;
  }

  private void refuseBadTag(String tag, Place place) {
    if (!TAG.matcher(tag).matches()) {
      problems.error(
          new Place(place.line(), place.column(), place.key(), ""),
          Reason.MALFORMED,
          "is no valid tag",
          "use letters, digits, '-', '_' and '.', beginning with a letter or digit, at most 64");
    }
  }

  private static void refuseSharedBlocks(Map<String, Section> sections) {
    Map<String, String> tagByBlock = new HashMap<>();
    Function<Section, Optional<Scalar>> block = section -> section.scalar("modbus-block");
    sections.forEach(
        (tag, section) ->
            block
                .apply(section)
                .ifPresent(
                    number -> {
                      String first = tagByBlock.putIfAbsent(number.text(), tag);
                      if (first != null) {
                        number.error(
                            Reason.CONFLICT,
                            "is the register block of " + first + " too",
                            "give every point a block of its own");
                      }
                    }));
  }
}
