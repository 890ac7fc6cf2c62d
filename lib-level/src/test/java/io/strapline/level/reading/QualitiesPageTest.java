package io.strapline.level.reading;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Holds the table of causes in the page on qualities against the code. */
class QualitiesPageTest {

  private static final Pattern ROW =
      Pattern.compile("\\| ([A-Z_]+) \\| (?:GOOD|UNCERTAIN|BAD) \\| ([-FCSM]) \\| (.+) \\|");

  @Test
  void listsEveryCauseWithTheLetterOfItsStatusAndWhatToDo() throws IOException {
    Map<String, String> onThePage = new LinkedHashMap<>();
    for (String line : Files.readAllLines(Path.of("..", "docs", "qualities.md"))) {
      Matcher row = ROW.matcher(line);
      if (row.matches()) {
        onThePage.put(row.group(1), row.group(2) + ": " + row.group(3));
      }
    }
    Map<String, String> inTheCode = new LinkedHashMap<>();
    for (Cause cause : Cause.values()) {
      inTheCode.put(cause.name(), cause.status().letter() + ": " + cause.advice());
    }
    assertEquals(inTheCode, onThePage);
  }
}
