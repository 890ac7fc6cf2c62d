package io.strapline.bridge.cli;

import io.strapline.bridge.config.ConfigException;
import io.strapline.bridge.config.ConfigProblem;
import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParseResult;

/** Turns what a command throws into a message for people and an exit code. Stateless. */
final class Failures implements IExecutionExceptionHandler {

  @Override
  public int handleExecutionException(Exception failure, CommandLine command, ParseResult parsed) {
    PrintWriter err = command.getErr();
    if (failure instanceof ConfigException refused) {
      printProblems(refused, err);
      return ExitCodes.CONFIGURATION;
    }
    err.println(command.getCommandName() + " failed: " + message(failure));
    err.flush();
    return ExitCodes.FAILED;
  }

  private static void printProblems(ConfigException refused, PrintWriter err) {
    for (ConfigProblem problem : refused.problems()) {
      err.println(problem);
    }
    int count = refused.problems().size();
    err.println(count == 1 ? "1 problem" : count + " problems");
    err.flush();
  }

  private static String message(Exception failure) {
    String message = failure.getMessage();
    return message == null ? failure.toString() : message;
  }
}
