package io.strapline.bridge.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Start of the program. */
@Command(
    name = "strapline",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Turns non-contact level transmitters into level, volume, alarms and status",
      "that a control system can trust, over OPC UA and Modbus TCP."
    },
    subcommands = {
      RunCommand.class,
      CheckCommand.class,
      EvalCommand.class,
      TableCommand.class,
      MapCommand.class,
      HelpCommand.class,
    },
    footer = {
      "",
      "Example:",
      "  strapline check config/kestrel-quay.yaml",
      "  strapline run config/kestrel-quay.yaml",
      "",
      "Strapline is no safety-instrumented system. Overfill protection needs an",
      "independent one; local codes apply."
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:failed while running, see the message",
      "2:the command line is wrong",
      "3:the configuration has problems, all listed"
    })
public final class Main implements Runnable {

  @SuppressWarnings("NullAway.Init") // set by picocli before anything runs
  @Spec
  private CommandSpec spec;

  Main() {}

  /** Runs the command line and exits with its code. */
  public static void main(String[] args) {
    System.exit(
        commandLine()
            .setOut(utf8(FileDescriptor.out))
            .setErr(utf8(FileDescriptor.err))
            .execute(args));
  }

  /** Returns the command line with its error handling. */
  static CommandLine commandLine() {
    CommandLine commandLine = new CommandLine(new Main());
    commandLine.setExecutionExceptionHandler(new Failures());
    commandLine.setParameterExceptionHandler(new Usage());
    return commandLine;
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Which command? Name one of those below.");
  }

  private static PrintWriter utf8(FileDescriptor stream) {
    PrintStream bytes = new PrintStream(new FileOutputStream(stream), true, StandardCharsets.UTF_8);
    return new PrintWriter(bytes, true, StandardCharsets.UTF_8);
  }
}
