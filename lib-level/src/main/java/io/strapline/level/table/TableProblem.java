package io.strapline.level.table;

/**
 * One thing that is wrong with a capacity table. Immutable.
 *
 * @param line line of the file, or number of the row, from 1
 * @param value what stands there
 * @param rule what is wrong with it
 * @param fix what to do
 */
public record TableProblem(int line, String value, String rule, String fix) {

  /** Returns the problem in one sentence: {@code line 4: height 0.3 m: repeats ...; remove ...}. */
  public String text() {
    return "line " + line + ": " + value + ": " + rule + "; " + fix;
  }
}
