package io.strapline.bridge.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import picocli.CommandLine;

/**
 * A command that was run in this process.
 *
 * @param code exit code
 * @param out what it printed
 * @param err what it complained of
 */
record CommandLineRun(int code, String out, String err) {

  /** The demonstration plant, seen from the module's folder. */
  static final String DEMO = "../config/kestrel-quay.yaml";

  static CommandLineRun of(String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    CommandLine commandLine =
        Main.commandLine().setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
    int code = commandLine.execute(arguments);
    return new CommandLineRun(code, out.toString(), err.toString());
  }

  List<String> lines() {
    return out.lines().toList();
  }
}
