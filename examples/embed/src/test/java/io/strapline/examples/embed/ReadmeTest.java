package io.strapline.examples.embed;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The example in README is the one that is compiled here, and it prints what a reader expects. */
class ReadmeTest {

  private static final Path SOURCE =
      Path.of("src/main/java/io/strapline/examples/embed/SiloLevel.java");

  @Test
  void readmeShowsTheExampleAsItIsCompiled() throws IOException {
    String readme = Files.readString(Path.of("../../README.md"));
    String opening = "<!-- SiloLevel.java -->\n```java\n";
    int start = readme.indexOf(opening) + opening.length();
    assertTrue(start >= opening.length(), "README.md lacks " + opening);
    assertEquals(
        Files.readString(SOURCE).strip(),
        readme.substring(start, readme.indexOf("```", start)).strip());
  }

  @Test
  void theExamplePrintsLevelVolumeAndMass() {
    String printed = printedByTheExample();
    // By hand: distance (21.5 + 1) / 2 = 11.25 m, level 21.9 - 11.25 = 10.65 m; volume of the
    // frustum
    // pi 3.2 / 12 (0.4^2 + 0.4 6 + 6^2) = 32.3040 m3 and of the cylinder pi 9 (10.65 - 3.2) =
    // 210.6438 m3.
    assertTrue(printed.contains("LEVEL            10.650 m  GOOD"), printed);
    assertTrue(printed.contains("VOLUME          242.948 m3 GOOD"), printed);
    assertTrue(printed.contains("MASS         327979.446 kg GOOD"), printed);
    assertTrue(printed.contains("NE 107 status: NORMAL, alarms: 2"), printed);
  }

  private static String printedByTheExample() {
    PrintStream before = System.out;
    ByteArrayOutputStream captured = new ByteArrayOutputStream();
    System.setOut(new PrintStream(captured, true, StandardCharsets.UTF_8));
    try {
      SiloLevel.main(new String[0]);
    } finally {
      System.setOut(before);
    }
    return captured.toString(StandardCharsets.UTF_8);
  }
}
