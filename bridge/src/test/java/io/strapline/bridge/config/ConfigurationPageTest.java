package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The reference page names every key. */
class ConfigurationPageTest {

  private static final Path PAGE = Path.of("..", "docs", "configuration.md");

  @Test
  void everyKeyIsNamedUnderItsSection() throws IOException {
    String page = Files.readString(PAGE);
    List<String> unnamed = new ArrayList<>();
    for (Keys section : Keys.values()) {
      for (String key : section.names()) {
        if (!page.contains("`" + key + "`")) {
          unnamed.add(section + "." + key);
        }
      }
    }
    assertEquals(List.of(), unnamed);
  }

  @Test
  void thePageIsShortEnoughToRead() throws IOException {
    int lines = Files.readAllLines(PAGE).size();
    assertTrue(lines <= 150, () -> lines + " lines");
  }
}
