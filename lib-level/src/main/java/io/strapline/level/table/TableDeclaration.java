package io.strapline.level.table;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a delivered table may declare in a comment, {@code # key: value}. */
public enum TableDeclaration {
  /** Begins a table and names it. */
  TABLE("table", false),
  /** Begins a block: {@code main} or {@code fraction}. */
  BLOCK("block", false),
  /**
   * The columns, in place of a header line: {@code height [mm], volume [L]}; with their places on
   * the line for text of fixed width: {@code height [mm] 1-8, volume [L] 10-20}.
   */
  COLUMNS("columns", true),
  /** Lowest main row that a fraction block serves, as written in the rows, with unit. */
  FROM("from", false),
  /** Main row from which on it serves no more, as written in the rows, with unit. */
  TO("to", false),
  /** Height of the gauge's reference point above the table's zero; needed for ullage. */
  REFERENCE_HEIGHT("reference height", true),
  /** Height of the table's zero above the vessel's datum, with sign; added to every height. */
  DATUM_OFFSET("datum offset", true),
  /** Volume that the rows leave out at the bottom; added to every volume. */
  HEEL("heel", true),
  /** {@code semicolon}, {@code tab}, {@code comma} or {@code blanks}. */
  SEPARATOR("separator", true),
  /** {@code point} or {@code comma}. */
  DECIMAL("decimal", true),
  /** {@code none}, {@code point}, {@code comma} or {@code blank}. */
  GROUPING("grouping", true);

  private static final int NEAR = 2;

  private final String key;
  private final boolean optional;

  TableDeclaration(String key, boolean optional) {
    this.key = key;
    this.optional = optional;
  }

  /** Returns the word before the colon. */
  public String key() {
    return key;
  }

  /** Returns whether {@link DeliveryOptions} may say it in place of the file. */
  public boolean mayBeAnOption() {
    return optional;
  }

  static Optional<TableDeclaration> of(String key) {
    String tidy = tidy(key);
    return Arrays.stream(values()).filter(known -> known.key.equals(tidy)).findFirst();
  }

  /** Returns the declaration that a mistyped key is near to, so that no slip becomes a comment. */
  static Optional<TableDeclaration> near(String key) {
    String tidy = tidy(key);
    return Arrays.stream(values())
        .filter(known -> known.key.length() > NEAR && distance(known.key, tidy) <= NEAR)
        .findFirst();
  }

  private static String tidy(String key) {
    return key.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
  }

  /** Edits from one word to the other (Levenshtein 1965), row by row. */
  private static int distance(String a, String b) {
    int[] row = new int[b.length() + 1];
    Arrays.setAll(row, j -> j);
    for (int i = 1; i <= a.length(); i++) {
      int diagonal = row[0];
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int swap = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        diagonal = row[j];
        row[j] = Math.min(swap, 1 + Math.min(row[j], row[j - 1]));
      }
    }
    return row[b.length()];
  }
}
