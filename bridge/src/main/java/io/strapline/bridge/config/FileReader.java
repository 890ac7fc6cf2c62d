package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;

/** Finds the files and folders that a configuration names. Stateless. */
final class FileReader {

  private FileReader() {}

  /** Returns a folder, relative to the folder of the configuration; it need not exist. */
  static Path folder(Section section, String key, String fallback) {
    return resolve(section, key, section.textOr(key, fallback)).orElse(Path.of(fallback));
  }

  /** Returns a required file that can be read; empty after a problem. */
  static Optional<Path> file(Section section, String key, String what) {
    String text = section.text(key, what);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    Optional<Path> file = resolve(section, key, text);
    if (file.isPresent() && !isReadable(file.get())) {
      section.error(
          key,
          Reason.MALFORMED,
          "is no readable file (looked for " + file.orElseThrow() + ")",
          "give a path relative to the folder of the configuration file");
      return Optional.empty();
    }
    return file;
  }

  private static boolean isReadable(Path file) {
    return Files.isReadable(file) && !Files.isDirectory(file);
  }

  private static Optional<Path> resolve(Section section, String key, String text) {
    try {
      Path base = section.problems().file().toAbsolutePath().getParent();
      return Optional.of((base == null ? Path.of(text) : base.resolve(text)).normalize());
    } catch (InvalidPathException unusable) {
      section.error(key, Reason.MALFORMED, "is no path", "give the path of a file or folder");
      return Optional.empty();
    }
  }
}
