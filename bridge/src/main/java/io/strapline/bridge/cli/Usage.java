package io.strapline.bridge.cli;

import java.io.PrintWriter;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Tells what is wrong with a command line: one line, and where the help is. Stateless. */
final class Usage implements IParameterExceptionHandler {

  @Override
  public int handleParseException(ParameterException wrong, String[] args) {
    CommandLine command = wrong.getCommandLine();
    PrintWriter err = command.getErr();
    err.println(wrong.getMessage());
    UnmatchedArgumentException.printSuggestions(wrong, err);
    if (command.getParent() == null) {
      command.usage(err);
    } else {
      err.println("See: strapline " + command.getCommandName() + " --help");
    }
    err.flush();
    return ExitCodes.USAGE;
  }
}
