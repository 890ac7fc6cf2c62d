package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The reference pages name every key. */
class ConfigurationPageTest {

  private static final Path DOCS = Path.of("..", "docs");

  private static List<Path> pages() throws IOException {
    try (Stream<Path> files = Files.list(DOCS)) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("configuration"))
          .toList();
    }
  }

  @Test
  void everyKeyIsNamedOnOneOfThem() throws IOException {
    StringBuilder page = new StringBuilder();
    for (Path file : pages()) {
      page.append(Files.readString(file));
    }
    List<String> unnamed = new ArrayList<>();
    for (Keys section : Keys.values()) {
      for (String key : section.names()) {
        if (page.indexOf("`" + key + "`") < 0) {
          unnamed.add(section + "." + key);
        }
      }
    }
    assertEquals(List.of(), unnamed);
  }

  @Test
  void everyPageIsShortEnoughToReadAndReachedFromTheFirst() throws IOException {
    String first = Files.readString(DOCS.resolve("configuration.md"));
    for (Path file : pages()) {
      int lines = Files.readAllLines(file).size();
      assertTrue(lines <= 150, () -> file + ": " + lines + " lines");
      String name = file.getFileName().toString();
      assertTrue(name.equals("configuration.md") || first.contains("(" + name + ")"), name);
    }
  }
}
