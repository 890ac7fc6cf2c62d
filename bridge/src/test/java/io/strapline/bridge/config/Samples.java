package io.strapline.bridge.config;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

/** Configuration files for tests, right and wrong. */
final class Samples {

  /** The file that holds every key once at least. */
  static final String EVERY_KEY = "every-key.yaml";

  private static final List<String> FILES =
      List.of(
          EVERY_KEY,
          "tables/sump.csv",
          "tables/falling.csv",
          "tables/delivered.csv",
          "recorded/series.csv");

  private Samples() {}

  /**
   * A way to break {@link #EVERY_KEY}.
   *
   * @param name in a few words
   * @param text the broken file
   * @param expected a part of each message, in order
   * @param refusedBySchema whether the JSON Schema finds it too
   */
  record Broken(String name, String text, List<String> expected, boolean refusedBySchema) {

    @Override
    public String toString() {
      return name;
    }
  }

  /** Returns the table of broken files. */
  static List<Broken> broken() {
    Load load = new Load(LoadSettings.builder().build());
    List<?> table = (List<?>) Objects.requireNonNull(load.loadFromString(text("broken.yaml")));
    return table.stream().map(row -> broken((Map<?, ?>) row)).toList();
  }

  private static Broken broken(Map<?, ?> row) {
    String name = String.valueOf(row.get("name"));
    String whole = text(EVERY_KEY);
    String replaced = String.valueOf(row.get("replace"));
    int at = whole.indexOf(replaced);
    if (at < 0) {
      throw new IllegalStateException(name + ": every-key.yaml does not hold " + replaced);
    }
    String text =
        whole.substring(0, at) + row.get("with") + whole.substring(at + replaced.length());
    List<String> expected =
        ((List<?>) Objects.requireNonNull(row.get("expect")))
            .stream().map(String::valueOf).toList();
    return new Broken(name, text, expected, "refuses".equals(row.get("schema")));
  }

  /** Returns the text of a sample. */
  static String text(String name) {
    try (InputStream in = Objects.requireNonNull(Samples.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Writes the samples into a folder and a configuration beside them; returns its path. */
  static Path write(Path folder, String configuration) throws IOException {
    for (String name : FILES) {
      Path file = folder.resolve(name);
      Files.createDirectories(Objects.requireNonNull(file.getParent()));
      Files.writeString(file, text(name));
    }
    return Files.writeString(folder.resolve("plant.yaml"), configuration);
  }
}
