package io.strapline.level.table;

import java.util.List;
import java.util.stream.Collectors;

/** A capacity table was refused; the message lists every problem. */
public final class CapacityTableException extends IllegalArgumentException {

  private static final long serialVersionUID = 1L;

  private final transient List<TableProblem> problems;

  CapacityTableException(String name, List<TableProblem> problems) {
    super(message(name, problems));
    this.problems = List.copyOf(problems);
  }

  /** Returns all problems, by line; never empty. */
  public List<TableProblem> problems() {
    return problems;
  }

  private static String message(String name, List<TableProblem> problems) {
    String count = problems.size() == 1 ? "1 problem" : problems.size() + " problems";
    return problems.stream()
        .map(TableProblem::text)
        .collect(Collectors.joining("\n  ", "capacity table " + name + ", " + count + ":\n  ", ""));
  }
}
