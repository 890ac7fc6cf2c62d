package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.table.CapacityTable;
import io.strapline.level.table.CapacityTableException;
import io.strapline.level.table.DeliveredTable;
import io.strapline.level.table.DeliveredTables;
import io.strapline.level.table.DeliveryOptions;
import io.strapline.level.table.Interpolation;
import io.strapline.level.table.TableDeclaration;
import io.strapline.level.table.TableProblem;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.CapacityCurve;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/** Reads a capacity table from the file that a configuration names. Stateless. */
final class TableReader {

  private static final int LARGEST_BYTES = 16 << 20;

  private static final List<TableDeclaration> DECLARATIONS =
      List.of(
          TableDeclaration.REFERENCE_HEIGHT,
          TableDeclaration.DATUM_OFFSET,
          TableDeclaration.HEEL,
          TableDeclaration.SEPARATOR,
          TableDeclaration.DECIMAL,
          TableDeclaration.GROUPING);

  private TableReader() {}

  /** What stands between the columns of a table. */
  enum Separator {
    SEMICOLON,
    TAB,
    COMMA,
    BLANKS
  }

  /** Decimal mark of a table. */
  enum Decimal {
    POINT,
    COMMA
  }

  /** Mark between thousands of a table. */
  enum Grouping {
    NONE,
    POINT,
    COMMA,
    BLANK
  }

  /** Returns the table; empty after a problem, which names the table's file and line. */
  static Optional<? extends CapacityCurve> read(Section section) {
    Interpolation interpolation =
        section.choiceOr("interpolation", Labels.all(Interpolation.class), Interpolation.LINEAR);
    DeliveryOptions options = options(section);
    return FileReader.file(section, "file", "the CSV file of the table")
        .filter(file -> section.isSound())
        .flatMap(
            file ->
                text(section, file)
                    .flatMap(text -> table(section, file, text, options))
                    .flatMap(table -> curve(section, file, table, interpolation)));
  }

  private static DeliveryOptions options(Section section) {
    section.optionalQuantity("reference-height", Dimension.LENGTH);
    section.optionalQuantity("datum-offset", Dimension.LENGTH);
    section.optionalQuantity("heel", Dimension.VOLUME);
    section.scalar("separator").ifPresent(word -> word.choice(Labels.all(Separator.class)));
    section.scalar("decimal").ifPresent(word -> word.choice(Labels.all(Decimal.class)));
    section.scalar("grouping").ifPresent(word -> word.choice(Labels.all(Grouping.class)));
    DeliveryOptions options = DeliveryOptions.none();
    for (TableDeclaration declaration : DECLARATIONS) {
      String value = section.textOr(key(declaration), "");
      options = value.isEmpty() ? options : options.with(declaration, value);
    }
    return options;
  }

  /** Returns the key for what a file may also declare: {@code reference height}. */
  private static String key(TableDeclaration declaration) {
    return declaration.key().replace(' ', '-');
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

  /** Returns the one table that is meant; a file may hold several. */
  private static Optional<DeliveredTable> table(
      Section section, Path file, String text, DeliveryOptions options) {
    DeliveredTables read = DeliveredTables.read(text, String.valueOf(file.getFileName()), options);
    List<String> names = read.tables().stream().map(DeliveredTable::name).toList();
    if (read.tables().isEmpty()) {
      return told(section, file, read.problems());
    }
    if (!section.has("table") && names.size() == 1) {
      return Optional.of(read.tables().get(0));
    }
    String wanted = section.text("table", "the name of one of " + String.join(", ", names));
    int at = names.indexOf(wanted);
    if (at < 0 && section.isSound()) {
      section.error(
          "table",
          Reason.CONFLICT,
          "is no table of the file",
          "give one of " + String.join(", ", names));
    }
    return at < 0 ? Optional.empty() : Optional.of(read.tables().get(at));
  }

  private static Optional<CapacityTable> curve(
      Section section, Path file, DeliveredTable table, Interpolation interpolation) {
    try {
      return Optional.of(table.capacityTable(interpolation));
    } catch (CapacityTableException refused) {
      return told(section, file, refused.problems());
    }
  }

  private static <T> Optional<T> told(Section section, Path file, List<TableProblem> problems) {
    String key = section.place("file").key();
    problems.forEach(problem -> section.problems().error(inTable(file, key, problem)));
    return Optional.empty();
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
