package io.strapline.level.table;

import io.strapline.level.table.TableLines.Line;
import io.strapline.level.units.Dimension;
import io.strapline.level.units.Quantities;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** A delivered file divided into tables and blocks, with what is declared for each. */
final class DeliveredText {

  private static final Pattern DECLARATION = Pattern.compile("#\\s*([A-Za-z][A-Za-z ]*?)\\s*:(.*)");

  /**
   * A value with its line; line 0 for an option.
   *
   * @param line from 1
   * @param text after the colon
   */
  record Declared(int line, String text) {

    TableProblem problem(TableDeclaration declaration, String rule, String fix) {
      String what = line == 0 ? "option " : "# ";
      return new TableProblem(line, what + declaration.key() + ": " + text, rule, fix);
    }

    /** Returns the value in SI units; empty, with the reason among the problems, if it is none. */
    Optional<Double> quantity(
        TableDeclaration declaration, Dimension dimension, List<TableProblem> problems) {
      try {
        return Optional.of(Quantities.parse(text, dimension));
      } catch (IllegalArgumentException notOne) {
        String why = "is not understood: " + notOne.getMessage();
        problems.add(problem(declaration, why, "write it such as 12.345 m or 350 L"));
        return Optional.empty();
      }
    }
  }

  /** A block: its kind, declarations and lines. */
  static final class Block {
    final int line;
    final boolean fraction;
    final Map<TableDeclaration, Declared> declared = new EnumMap<>(TableDeclaration.class);
    final List<Line> content = new ArrayList<>();

    Block(int line, boolean fraction) {
      this.line = line;
      this.fraction = fraction;
    }
  }

  /** A table: its name, declarations and blocks. */
  static final class Table {
    final int line;
    final String name;
    final Map<TableDeclaration, Declared> declared = new EnumMap<>(TableDeclaration.class);
    final List<Block> blocks = new ArrayList<>();
    final List<TableProblem> problems = new ArrayList<>();

    Table(int line, String name) {
      this.line = line;
      this.name = name;
    }

    boolean hasContent() {
      return blocks.stream().anyMatch(block -> !block.content.isEmpty());
    }
  }

  final Map<TableDeclaration, Declared> declared = new EnumMap<>(TableDeclaration.class);
  final List<Table> tables = new ArrayList<>();
  final List<TableProblem> problems = new ArrayList<>();

  private final String fileName;
  private final DeliveryOptions options;
  private @Nullable Table table;
  private @Nullable Block block;

  private DeliveredText(String fileName, DeliveryOptions options) {
    this.fileName = fileName;
    this.options = options;
  }

  static DeliveredText of(String text, String fileName, DeliveryOptions options) {
    DeliveredText delivered = new DeliveredText(fileName, options);
    TableLines.numbered(text).forEach(delivered::take);
    if (delivered.tables.stream().noneMatch(Table::hasContent)) {
      delivered.problems.add(
          new TableProblem(1, "the text", "holds no rows", "enter header and rows"));
    }
    return delivered;
  }

  private void take(Line line) {
    String text = line.text().strip();
    if (text.startsWith("#")) {
      Matcher matcher = DECLARATION.matcher(text);
      if (matcher.matches()) {
        declare(line, matcher.group(1), matcher.group(2).strip());
      }
    } else if (!text.isEmpty()) {
      currentBlock(line.number()).content.add(line);
    }
  }

  private void declare(Line line, String key, String value) {
    Optional<TableDeclaration> known = TableDeclaration.of(key);
    if (known.isEmpty()) {
      TableDeclaration.near(key)
          .ifPresent(
              near ->
                  problem(
                      line,
                      "is no declaration, but near to # " + near.key() + ":",
                      "correct it, or leave out the colon of a plain comment"));
      return;
    }
    switch (known.get()) {
      case TABLE -> beginTable(line, value);
      case BLOCK -> beginBlock(line, value);
      case FROM, TO -> putInBlock(line, known.get(), value);
      case COLUMNS -> putColumns(line, value);
      case REFERENCE_HEIGHT, DATUM_OFFSET, HEEL -> putInTable(line, known.get(), value);
      case SEPARATOR, DECIMAL, GROUPING -> putInFile(line, known.get(), value);
    }
  }

  private void beginTable(Line line, String name) {
    if (name.isEmpty()) {
      problem(line, "names no table", "write its name after the colon");
    }
    if (tables.stream().anyMatch(earlier -> earlier.name.equals(name))) {
      problem(line, "names a table that is there already", "give each table its own name");
    }
    table = new Table(line.number(), name.isEmpty() ? fileName : name);
    tables.add(table);
    block = null;
  }

  private void beginBlock(Line line, String kind) {
    String tidy = kind.toLowerCase(Locale.ROOT);
    if (!tidy.equals("main") && !tidy.equals("fraction")) {
      problem(line, "is no kind of block", "write main or fraction");
    }
    block = new Block(line.number(), tidy.equals("fraction"));
    currentTable(line.number()).blocks.add(block);
  }

  private void putInBlock(Line line, TableDeclaration declaration, String value) {
    if (block == null || !block.fraction || !block.content.isEmpty()) {
      problem(line, "stands at no fraction block", "write it below # block: fraction");
    } else {
      put(block.declared, line, declaration, value);
    }
  }

  /** Columns hold for the block just begun, else for all main blocks of the table or file. */
  private void putColumns(Line line, String value) {
    if (block != null && !block.content.isEmpty()) {
      problem(line, "stands below rows", "write # block: main or fraction above it");
    } else if (block != null) {
      put(block.declared, line, TableDeclaration.COLUMNS, value);
    } else {
      putInTable(line, TableDeclaration.COLUMNS, value);
    }
  }

  private void putInTable(Line line, TableDeclaration declaration, String value) {
    if (table != null && table.hasContent()) {
      problem(line, "stands below rows of its table", "move it above them: it holds for all");
    } else {
      put(table == null ? declared : table.declared, line, declaration, value);
    }
  }

  private void putInFile(Line line, TableDeclaration declaration, String value) {
    if (tables.stream().anyMatch(Table::hasContent)) {
      problem(line, "stands below rows", "move it to the top: it holds for the whole file");
    } else {
      put(declared, line, declaration, value);
    }
  }

  private void put(
      Map<TableDeclaration, Declared> scope,
      Line line,
      TableDeclaration declaration,
      String value) {
    Optional<String> option = options.value(declaration);
    if (option.isPresent() && !option.get().strip().equalsIgnoreCase(value)) {
      problem(line, "differs from the option \"" + option.get() + '"', "remove one of the two");
    }
    if (scope.put(declaration, new Declared(line.number(), value)) != null) {
      problem(line, "is declared a second time", "remove one of the two");
    }
  }

  private Table currentTable(int line) {
    if (table == null) {
      table = new Table(line, fileName);
      tables.add(table);
    }
    return table;
  }

  private Block currentBlock(int line) {
    if (block == null) {
      block = new Block(line, false);
      currentTable(line).blocks.add(block);
    }
    return block;
  }

  private void problem(Line line, String rule, String fix) {
    problems.add(new TableProblem(line.number(), line.text().strip(), rule, fix));
  }

  /** Returns what is declared: for the block, else the table, else the file, else by option. */
  Optional<Declared> find(TableDeclaration declaration, Table table) {
    return Optional.ofNullable(table.declared.get(declaration))
        .or(() -> Optional.ofNullable(declared.get(declaration)))
        .or(() -> options.value(declaration).map(value -> new Declared(0, value)));
  }

  /** Returns the columns declared for a block; those of table, file and options are main ones. */
  Optional<Declared> columns(Table table, Block block) {
    Optional<Declared> own = Optional.ofNullable(block.declared.get(TableDeclaration.COLUMNS));
    return own.isPresent() || block.fraction ? own : find(TableDeclaration.COLUMNS, table);
  }

  /** Returns what is declared for the whole file or by option. */
  Optional<Declared> inFile(TableDeclaration declaration) {
    return Optional.ofNullable(declared.get(declaration))
        .or(() -> options.value(declaration).map(value -> new Declared(0, value)));
  }
}
