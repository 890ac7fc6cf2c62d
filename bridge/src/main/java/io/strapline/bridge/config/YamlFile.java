package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionEndEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;

/**
 * Reads a YAML file into nodes with their places. Plain data only: no tags, no anchors, no aliases,
 * bounded size and depth, so that no file can make the program build objects or fill its memory.
 * Stateless.
 */
final class YamlFile {

  /** Largest file that is read, in bytes. */
  static final int LARGEST_BYTES = 1 << 20;

  /** Deepest nesting that is read. */
  static final int DEEPEST = 20;

  private static final LoadSettings SETTINGS =
      LoadSettings.builder().setCodePointLimit(LARGEST_BYTES).setUseMarks(true).build();

  private YamlFile() {}

  /** Returns the mapping at the root of the file; empty when a problem was noted. */
  static Optional<MappingNode> read(Problems problems) {
    try {
      return text(problems).flatMap(text -> compose(text, problems));
    } catch (MarkedYamlEngineException syntax) {
      Place place = Place.of(syntax.getProblemMark(), "", "");
      problems.error(
          place,
          Reason.MALFORMED,
          "is not YAML: " + syntax.getProblem(),
          "correct the syntax here");
    } catch (YamlEngineException refused) {
      wholeFile(problems, "is not YAML: " + refused.getMessage(), "write a YAML file");
    }
    return Optional.empty();
  }

  private static Optional<String> text(Problems problems) {
    Path file = problems.file();
    try {
      if (Files.size(file) > LARGEST_BYTES) {
        return wholeFile(
            problems,
            "is larger than " + LARGEST_BYTES + " bytes",
            "split the plant into several files, one bridge each");
      }
      return decode(Files.readAllBytes(file), problems);
    } catch (NoSuchFileException missing) {
      return wholeFile(problems, "does not exist", "give the path of a configuration file");
    } catch (IOException unreadable) {
      return wholeFile(
          problems, "cannot be read (" + unreadable + ")", "check that it is a readable file");
    }
  }

  private static Optional<String> decode(byte[] bytes, Problems problems) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return Optional.of(text.startsWith("\uFEFF") ? text.substring(1) : text);
    } catch (CharacterCodingException notUtf8) {
      return wholeFile(problems, "is not UTF-8 text", "save the file in UTF-8");
    }
  }

  private static Optional<MappingNode> compose(String text, Problems problems) {
    if (!isPlainData(text, problems)) {
      return Optional.empty();
    }
    Optional<Node> root = new Compose(SETTINGS).composeString(text);
    if (root.isEmpty()) {
      return wholeFile(problems, "is empty", "write at least the keys plant and points");
    }
    if (root.get() instanceof MappingNode mapping) {
      return Optional.of(mapping);
    }
    problems.error(
        Place.of(root.get(), ""),
        Reason.MALFORMED,
        "is no mapping of keys to values",
        "write lines such as `plant: Kestrel Quay`");
    return Optional.empty();
  }

  /** Looks at the events before anything is built from them. */
  private static boolean isPlainData(String text, Problems problems) {
    int depth = 0;
    boolean plain = true;
    for (Event event : new Parse(SETTINGS).parseString(text)) {
      depth += step(event);
      if (depth > DEEPEST) {
        refuse(event, problems, "is nested deeper than " + DEEPEST, "nest less deeply");
        return false;
      }
      plain &= isPlain(event, problems);
    }
    return plain;
  }

  private static int step(Event event) {
    if (event instanceof CollectionStartEvent) {
      return 1;
    }
    return event instanceof CollectionEndEvent ? -1 : 0;
  }

  private static boolean isPlain(Event event, Problems problems) {
    boolean anchored = event instanceof NodeEvent node && node.getAnchor().isPresent();
    if (anchored || event instanceof AliasEvent) {
      refuse(event, problems, "anchors and aliases are not read", "write the value out here");
      return false;
    }
    if (hasTag(event)) {
      refuse(event, problems, "tags are not read", "remove the word that begins with !");
      return false;
    }
    return true;
  }

  private static boolean hasTag(Event event) {
    if (event instanceof ScalarEvent scalar) {
      return scalar.getTag().isPresent();
    }
    return event instanceof CollectionStartEvent start && start.getTag().isPresent();
  }

  private static void refuse(Event event, Problems problems, String rule, String fix) {
    problems.error(Place.of(event.getStartMark(), "", ""), Reason.MALFORMED, rule, fix);
  }

  private static <T> Optional<T> wholeFile(Problems problems, String rule, String fix) {
    problems.error(new Place(0, 0, "", ""), Reason.MALFORMED, rule, fix);
    return Optional.empty();
  }
}
