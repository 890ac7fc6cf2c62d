package io.strapline.bridge.cli;

import io.strapline.bridge.config.PointConfig;
import io.strapline.level.vessel.CapacityCurve;
import java.io.PrintWriter;
import java.math.BigDecimal;
import java.math.MathContext;

/** Writes a capacity table in the form that the library reads. Not thread-safe. */
final class TableText {

  /**
   * A tenth of a millilitre: finer than any vessel is measured, so that no step is rounded away.
   */
  private static final int VOLUME_DECIMALS = 7;

  private static final int HEIGHT_DECIMALS = 6;

  private static final double HALF_A_DIGIT_METRES = 0.5e-6;

  private final PointConfig point;
  private final CapacityCurve vessel;
  private final double stepMetres;

  /** Takes the point, its vessel and the height between rows, greater than zero. */
  TableText(PointConfig point, CapacityCurve vessel, double stepMetres) {
    this.point = point;
    this.vessel = vessel;
    this.stepMetres = stepMetres;
  }

  /** Writes comments, header and rows; the last row is the full height. */
  void write(PrintWriter out) {
    out.println("# " + point.tag() + " " + oneLine(point.title()));
    out.println("# " + oneLine(Shapes.describe(vessel)));
    out.println("# height above the datum, volume below a level surface");
    out.println("# separator: semicolon");
    out.println("# decimal: point");
    out.println("height [m];volume [m3]");
    // The height of no volume is that of a table's first row, and zero in a vessel.
    double bottom = vessel.heightMetres(0);
    double top = vessel.maxHeightMetres();
    int row = 0;
    // A row that would print like the last one is left out.
    double end = top - HALF_A_DIGIT_METRES;
    for (double height = bottom; height < end; height = height(bottom, ++row)) {
      writeRow(out, height);
    }
    writeRow(out, top);
  }

  /** Decimal arithmetic: three steps of 0.1 m are 0.3 m, not 0.30000000000000004 m. */
  private double height(double bottom, int row) {
    BigDecimal step = BigDecimal.valueOf(stepMetres);
    return BigDecimal.valueOf(bottom)
        .add(step.multiply(BigDecimal.valueOf(row)), MathContext.DECIMAL64)
        .doubleValue();
  }

  private void writeRow(PrintWriter out, double height) {
    double volume = vessel.volumeCubicMetres(height);
    out.println(Figures.of(height, HEIGHT_DECIMALS) + ";" + Figures.of(volume, VOLUME_DECIMALS));
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ").strip();
  }
}
