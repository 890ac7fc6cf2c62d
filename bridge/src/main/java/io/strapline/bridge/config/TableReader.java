package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.table.CapacityTable;
import io.strapline.level.table.CapacityTableException;
import io.strapline.level.table.Interpolation;
import io.strapline.level.table.TableProblem;
import io.strapline.level.vessel.CapacityCurve;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Reads a capacity table from the file that a configuration names. Stateless. */
final class TableReader {

  private static final int LARGEST_BYTES = 16 << 20;

  private TableReader() {}

  /** Returns the table; empty after a problem, which names the table's file and line. */
  static Optional<? extends CapacityCurve> read(Section section) {
    Interpolation interpolation =
        section.choiceOr("interpolation", Labels.all(Interpolation.class), Interpolation.LINEAR);
    return FileReader.file(section, "file", "the CSV file of the table")
        .flatMap(
            file -> text(section, file).flatMap(text -> table(section, file, text, interpolation)));
  }

  private static Optional<String> text(Section section, Path file) {
    try {
      if (Files.size(file) <= LARGEST_BYTES) {
        return Optional.of(Files.readString(file, StandardCharsets.UTF_8));
      }
      section.error(
          "file",
          Reason.OUT_OF_RANGE,
          "is larger than " + LARGEST_BYTES + " bytes",
          "thin the table: a row a millimetre is plenty");
    } catch (CharacterCodingException notUtf8) {
      section.error("file", Reason.MALFORMED, "is not UTF-8 text", "save the table in UTF-8");
    } catch (IOException unreadable) {
      section.error(
          "file", Reason.MALFORMED, "cannot be read (" + unreadable + ")", "check the file");
    }
    return Optional.empty();
  }

  private static Optional<CapacityTable> table(
      Section section, Path file, String text, Interpolation interpolation) {
    try {
      String name = String.valueOf(file.getFileName());
      return Optional.of(CapacityTable.read(text, name, interpolation));
    } catch (CapacityTableException refused) {
      String key = section.place("file").key();
      for (TableProblem problem : refused.problems()) {
        section.problems().error(inTable(file, key, problem));
      }
      return Optional.empty();
    }
  }

  private static ConfigProblem inTable(Path file, String key, TableProblem problem) {
    return new ConfigProblem(
        file,
        problem.line(),
        0,
        key,
        problem.value(),
        Reason.MALFORMED,
        problem.rule(),
        problem.fix());
  }
}
