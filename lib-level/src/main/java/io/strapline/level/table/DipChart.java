package io.strapline.level.table;

import io.strapline.level.internal.Check;
import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.VolumeUnit;
import io.strapline.level.vessel.CapacityCurve;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;

/**
 * A chart to be printed and hung beside the tank: one row for each whole inch, or whole unit, and
 * the fractions of it beside. Immutable. Plain text; a form feed begins each further page.
 */
public final class DipChart {

  private static final int MOST_ROWS = 50_000;

  private final CapacityCurve curve;
  private final Form form;
  private final int rows;

  private DipChart(CapacityCurve curve, Form form) {
    this.curve = curve;
    this.form = form;
    double units = form.unit().fromSi(curve.maxHeightMetres());
    // A hair beyond the last whole unit is that unit.
    rows = (int) Math.ceil(units * (1 - CapacityCurve.SNAP)) + 1;
  }

  /**
   * How a chart is written.
   *
   * @param unit of the rows, such as INCH or CENTIMETRE
   * @param parts of a unit: 1, 2, 4, 8 or 16 for fractions, 5 or 10 for decimals
   * @param volume unit of the volumes
   * @param decimals of the volumes, 0 to 6
   * @param rowsPerPage 5 or more
   */
  public record Form(LengthUnit unit, int parts, VolumeUnit volume, int decimals, int rowsPerPage) {

    /** Checks the fields. */
    public Form {
      Check.present("DipChart.unit", unit, "give INCH or CENTIMETRE");
      Check.present("DipChart.volume", volume, "give the unit of the volumes");
      Check.between("DipChart.decimals", decimals, "", 0, 6, "give fewer decimals");
      Check.between("DipChart.rowsPerPage", rowsPerPage, "rows", 5, MOST_ROWS, "60 fit a page");
      if (parts != 1
          && parts != 2
          && parts != 4
          && parts != 8
          && parts != 16
          && parts != 5
          && parts != 10) {
        throw Check.error(
            "DipChart.parts",
            Integer.toString(parts),
            "",
            "must be 1, 2, 4, 8, 16, 5 or 10",
            "give the fractions that the tape is read to");
      }
    }

    String part(int over) {
      if (parts == 5 || parts == 10) {
        return String.format(Locale.ROOT, "0.%d", over * 10 / parts);
      }
      int common = Integer.lowestOneBit(over);
      return over == 0 ? "0" : over / common + "/" + parts / common;
    }
  }

  /**
   * Returns the chart of a curve.
   *
   * @throws IllegalArgumentException if it had more than 50,000 rows
   */
  public static DipChart of(CapacityCurve curve, Form form) {
    Check.present("DipChart.curve", curve, "pass the vessel or its capacity table");
    Check.present("DipChart.form", form, "say how the chart is written");
    Check.between(
        "DipChart.rows",
        curve.maxHeightMetres() / form.unit().toSi(1),
        "rows",
        0,
        MOST_ROWS,
        "use a larger unit");
    return new DipChart(curve, form);
  }

  /** Returns the volume at a row and part, in the chart's unit, beyond the top the capacity. */
  private double volume(int row, int part) {
    double height = form.unit().toSi(row + (double) part / form.parts());
    return form.volume().fromSi(curve.volumeCubicMetres(height));
  }

  private boolean isCovered(int row, int part) {
    return curve.covers(form.unit().toSi(row + (double) part / form.parts()));
  }

  private String text(double volume) {
    return BigDecimal.valueOf(volume).setScale(form.decimals(), RoundingMode.HALF_UP).toString();
  }

  /** Returns the chart with a column for every part; a dash where the vessel ends. */
  public String grid() {
    StringBuilder text = new StringBuilder();
    int width = width();
    for (int row = 0; row < rows; row++) {
      beginPage(text, row, "volume at whole " + form.unit().label() + " and part, in ");
      if (row % form.rowsPerPage() == 0) {
        cell(text, form.unit().asciiSymbol(), 7);
        for (int part = 0; part < form.parts(); part++) {
          cell(text, form.part(part), width);
        }
        text.append('\n');
      }
      cell(text, Integer.toString(row), 7);
      for (int part = 0; part < form.parts(); part++) {
        cell(text, isCovered(row, part) ? text(volume(row, part)) : "-", width);
      }
      text.append('\n');
    }
    return text.toString();
  }

  /**
   * Returns the narrow chart: for each row its volume and what each part above it adds, to be
   * multiplied by the parts read. {@link #greatestPartError} is written at its foot.
   */
  public String withParts() {
    StringBuilder text = new StringBuilder();
    String perPart = form.parts() == 1 ? "per unit" : "per " + form.part(1);
    int width = width();
    for (int row = 0; row < rows; row++) {
      beginPage(text, row, "volume and what each part adds, in ");
      if (row % form.rowsPerPage() == 0) {
        cell(text, form.unit().asciiSymbol(), 7);
        cell(text, "volume", width);
        cell(text, perPart, width + 2);
        text.append('\n');
      }
      boolean whole = isCovered(row, 0) && isCovered(row + 1, 0);
      cell(text, Integer.toString(row), 7);
      cell(text, isCovered(row, 0) ? text(volume(row, 0)) : "-", width);
      cell(text, whole ? part(row).toString() : "-", width + 2);
      text.append('\n');
    }
    text.append(
        String.format(
            Locale.ROOT,
            "volume plus parts is right to %s %s%n".replace("%n", "\n"),
            BigDecimal.valueOf(greatestPartError())
                .setScale(form.decimals() + 1, RoundingMode.UP)
                .toPlainString(),
            form.volume().asciiSymbol()));
    return text.toString();
  }

  /** What a part adds, to one digit more than the volumes. */
  private BigDecimal part(int row) {
    double rise = volume(row + 1, 0) - volume(row, 0);
    return BigDecimal.valueOf(rise / form.parts())
        .setScale(form.decimals() + 1, RoundingMode.HALF_UP);
  }

  /**
   * Returns how far printed volume plus printed parts lies from the curve at most, at any part of
   * any row, in the chart's volume unit, rounding included. Rows that reach above the vessel have
   * no parts.
   */
  public double greatestPartError() {
    double greatest = 0;
    for (int row = 0; row < rows - 1; row++) {
      if (isCovered(row, 0) && isCovered(row + 1, 0)) {
        BigDecimal printed = new BigDecimal(text(volume(row, 0)));
        for (int part = 0; part < form.parts(); part++) {
          BigDecimal sum = printed.add(part(row).multiply(BigDecimal.valueOf(part)));
          greatest = Math.max(greatest, Math.abs(sum.doubleValue() - volume(row, part)));
        }
      }
    }
    return greatest;
  }

  private int width() {
    return text(form.volume().fromSi(curve.capacityCubicMetres())).length() + 2;
  }

  private void beginPage(StringBuilder text, int row, String title) {
    if (row % form.rowsPerPage() == 0) {
      text.append(row == 0 ? "" : "\f").append(title).append(form.volume().asciiSymbol());
      text.append('\n');
    }
  }

  private static void cell(StringBuilder text, String cell, int width) {
    text.append(" ".repeat(Math.max(width - cell.length(), 1))).append(cell);
  }
}
