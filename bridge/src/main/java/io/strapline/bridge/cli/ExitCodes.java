package io.strapline.bridge.cli;

import picocli.CommandLine.ExitCode;

/** What the program says to the shell that started it. */
final class ExitCodes {

  /** Done. */
  static final int OK = ExitCode.OK;

  /** Failed while running. */
  static final int FAILED = ExitCode.SOFTWARE;

  /** The command line is wrong. */
  static final int USAGE = ExitCode.USAGE;

  /** The configuration has problems. */
  static final int CONFIGURATION = 3;

  private ExitCodes() {}
}
