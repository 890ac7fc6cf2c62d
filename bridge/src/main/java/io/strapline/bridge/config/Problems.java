package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Collects what is wrong or doubtful in one configuration file. Not thread-safe. */
final class Problems {

  private final Path file;
  // Sets, since a section that is looked at twice finds the same problems twice.
  private final Set<ConfigProblem> errors = new LinkedHashSet<>();
  private final Set<ConfigProblem> warnings = new LinkedHashSet<>();

  /** Starts an empty collection for this file. */
  Problems(Path file) {
    this.file = file;
  }

  /** Returns the configuration file. */
  Path file() {
    return file;
  }

  /** Notes an error. */
  void error(Place place, Reason reason, String rule, String fix) {
    errors.add(problem(place, reason, rule, fix));
  }

  /** Notes an error that stands in another file, such as a capacity table. */
  void error(ConfigProblem problem) {
    errors.add(problem);
  }

  /** Notes something doubtful that does not prevent a start. */
  void warn(Place place, Reason reason, String rule, String fix) {
    warnings.add(problem(place, reason, rule, fix));
  }

  /** Returns whether no error stands at this key path or below it. */
  boolean soundBelow(String path) {
    return errors.stream().noneMatch(error -> isAtOrBelow(error.key(), path));
  }

  /** Returns the warnings in the order of the file. */
  List<ConfigProblem> warnings() {
    return warnings.stream().sorted(ConfigProblem.BY_PLACE).toList();
  }

  /** Fails with all errors together, if there are any. */
  void throwIfAny() throws ConfigException {
    if (!errors.isEmpty()) {
      throw new ConfigException(errors.stream().sorted(ConfigProblem.BY_PLACE).toList());
    }
  }

  private ConfigProblem problem(Place place, Reason reason, String rule, String fix) {
    return new ConfigProblem(
        file, place.line(), place.column(), place.key(), place.value(), reason, rule, fix);
  }

  private static boolean isAtOrBelow(String key, String path) {
    return path.isEmpty()
        || key.equals(path)
        || key.startsWith(path + ".")
        || key.startsWith(path + "[");
  }
}
