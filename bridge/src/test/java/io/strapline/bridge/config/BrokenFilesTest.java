package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.Samples.Broken;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every way to break a file is told with its place, its rule and its fix, and nothing else is. */
class BrokenFilesTest {

  static List<Broken> broken() {
    return Samples.broken();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("broken")
  void isRefusedWithEveryProblemAndNoOther(Broken sample, @TempDir Path folder) throws IOException {
    Path file = Samples.write(folder, sample.text());

    ConfigException refused =
        assertThrows(ConfigException.class, () -> PlantReader.read(file), sample.name());

    List<String> told = refused.problems().stream().map(ConfigProblem::toString).toList();
    assertEquals(sample.expected().size(), told.size(), () -> String.join("\n", told));
    for (int i = 0; i < told.size(); i++) {
      String expected = sample.expected().get(i);
      String message = told.get(i);
      assertTrue(
          message.contains(expected), () -> "expected " + expected + "\n but was " + message);
      assertTrue(message.contains("; "), () -> "no fix in " + message);
    }
  }
}
