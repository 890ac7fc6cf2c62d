package io.strapline.level.table;

/**
 * A row as it stands in its table, in the table's own units.
 *
 * @param line for messages
 * @param height any double
 * @param volume any double
 */
record Entry(int line, double height, double volume) {}
