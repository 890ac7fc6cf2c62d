package io.strapline.bridge.config;

import java.util.List;
import java.util.stream.Collectors;

/** A configuration that cannot be used, with every problem that was found in it. */
public final class ConfigException extends Exception {

  private static final long serialVersionUID = 1L;

  private final transient List<ConfigProblem> problems;

  /** Takes the problems, at least one. */
  ConfigException(List<ConfigProblem> problems) {
    super(problems.stream().map(ConfigProblem::toString).collect(Collectors.joining("\n")));
    this.problems = List.copyOf(problems);
  }

  /** Returns the problems in the order of the file, unmodifiable. */
  public List<ConfigProblem> problems() {
    return problems;
  }
}
