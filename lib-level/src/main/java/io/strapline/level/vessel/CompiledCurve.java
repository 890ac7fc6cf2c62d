package io.strapline.level.vessel;

import io.strapline.level.internal.Check;
import java.util.Arrays;

/**
 * Any capacity curve worked out beforehand, for look-ups in a few nanoseconds: a table of cubics
 * whose cell is found from the bits of the height, without search. Immutable and safe for any
 * thread.
 *
 * <p>Everywhere the volume lies within {@link #BOUND} of the capacity of the exact curve's. Each
 * fit is compared with the exact curve at nine points while the table is built, and refined until
 * it lies within a quarter of that; {@link #deviationCubicMetres} is the greatest difference found.
 * Near empty and full of a lying cylinder or a sphere the volume begins with a broken power of the
 * height, which no even grid can follow; here the cells grow narrower towards both ends, see {@link
 * Octaves}.
 *
 * <p>The way from volume to height is the exact inverse of the compiled volume: both never fall,
 * both ends are exact. It costs some ten to fifty volumes.
 */
public final class CompiledCurve implements CapacityCurve {

  /** Part of the capacity within which the volume agrees with the exact curve. */
  public static final double BOUND = 1e-9;

  private final CapacityCurve exact;
  private final double full;
  private final double capacity;
  private final double scale;

  /** Four coefficients a cell: upper half from the top down, then lower half from the bottom up. */
  private final double[] table;

  private final double[] partStarts;
  private final double[] partTable;
  private final int cells;
  private final double deviation;

  /** What lies in the vessel at height zero: nothing, or the heel of a capacity table. */
  private final double heel;

  private final double heelHeight;

  /** The lowest height that holds the capacity, below the full height if the curve ends flat. */
  private final double fullFrom;

  private CompiledCurve(CapacityCurve exact) {
    CurveCompiler compiler = new CurveCompiler(exact);
    this.exact = exact;
    full = exact.maxHeightMetres();
    capacity = exact.capacityCubicMetres();
    scale = 1 / full;
    table = compiler.table();
    partStarts = compiler.partStarts();
    partTable = compiler.partTable();
    cells = compiler.cells();
    deviation = compiler.worst();
    heel = exact.volumeCubicMetres(0);
    heelHeight = exact.heightMetres(heel);
    fullFrom = exact.heightMetres(capacity) == full ? full : lowest(capacity);
  }

  /**
   * Compiles a curve. This works the curve out some hundred thousand times: do it once, when the
   * vessel is configured.
   *
   * @throws IllegalArgumentException if the volume jumps at some height
   */
  public static CompiledCurve of(CapacityCurve curve) {
    return curve instanceof CompiledCurve compiled ? compiled : new CompiledCurve(curve);
  }

  /** Returns the curve this one stands for. */
  public CapacityCurve exact() {
    return exact;
  }

  /** Returns the greatest difference from the exact curve that is allowed, in cubic metres. */
  public double boundCubicMetres() {
    return BOUND * capacity;
  }

  /** Returns the greatest difference from the exact curve that was found while building. */
  public double deviationCubicMetres() {
    return deviation;
  }

  /** Returns the number of cubics, the parts of refined cells among them. */
  public int cells() {
    return cells;
  }

  @Override
  public double maxHeightMetres() {
    return full;
  }

  @Override
  public double capacityCubicMetres() {
    return capacity;
  }

  @Override
  public boolean covers(double heightMetres) {
    return exact.covers(heightMetres);
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    if (!(heightMetres > 0 && heightMetres < full)) {
      return atTheEnd(heightMetres);
    }
    double side = heightMetres * scale - 0.5;
    double a = Octaves.MIDDLE - Math.abs(side);
    long bits = Double.doubleToRawLongBits(a);
    double x = a - Double.longBitsToDouble(bits & Octaves.MASK);
    int at = cell(bits, side) << 2;
    double[] t = table;
    double volume = t[at] + x * (t[at + 1] + x * (t[at + 2] + x * t[at + 3]));
    // Not a number marks a refined cell.
    return Double.isNaN(volume) ? refined(at, x) : volume;
  }

  /** The sign bit of {@code side} is set in the lower half. */
  private static int cell(long bits, double side) {
    int sign = (int) (Double.doubleToRawLongBits(side) >> 63);
    return (int) (bits >>> Octaves.SHIFT) - Octaves.BASE + (sign & Octaves.CELLS);
  }

  private double atTheEnd(double heightMetres) {
    return Dimensions.clamp("CompiledCurve.height", heightMetres, "m", full) == 0 ? heel : capacity;
  }

  private double refined(int at, double x) {
    int part = part(at, x);
    double y = x - partStarts[part];
    double[] t = partTable;
    int i = 4 * part;
    return t[i] + y * (t[i + 1] + y * (t[i + 2] + y * t[i + 3]));
  }

  private int part(int at, double x) {
    int found = Arrays.binarySearch(partStarts, (int) table[at + 1], (int) table[at + 2], x);
    return found >= 0 ? found : -found - 2;
  }

  /**
   * Works out many volumes at once. Nothing is allocated.
   *
   * @param heightsMetres as of {@link #volumeCubicMetres}
   * @param out takes the volumes, as long as the heights; may be the same array
   * @throws IllegalArgumentException if the lengths differ or a height is NaN; those before it are
   *     done
   */
  public void volumes(double[] heightsMetres, double[] out) {
    if (out.length != heightsMetres.length) {
      throw Check.error(
          "CompiledCurve.out.length",
          Integer.toString(out.length),
          "",
          "must be that of the heights, " + heightsMetres.length,
          "give an array of the same length");
    }
    for (int i = 0; i < heightsMetres.length; i++) {
      out[i] = volumeCubicMetres(heightsMetres[i]);
    }
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    double volume = Dimensions.clamp("CompiledCurve.volume", volumeCubicMetres, "m3", capacity);
    if (volume <= heel || volume == capacity) {
      return volume <= heel ? heelHeight : fullFrom;
    }
    return Math.min(Math.max(lowest(volume), heelHeight), fullFrom);
  }

  private double lowest(double volume) {
    HeightSearch search = new HeightSearch(this::volumeCubicMetres, this::slope, full);
    return search.lowest(volume, about(volume));
  }

  /** Slope of the cubic at a height; it need not be exact. */
  private double slope(double heightMetres) {
    double side = Math.min(heightMetres * scale, 1) - 0.5;
    double a = Octaves.MIDDLE - Math.abs(side);
    long bits = Double.doubleToRawLongBits(a);
    double x = a - Double.longBitsToDouble(bits & Octaves.MASK);
    int at = cell(bits, side) << 2;
    double[] t = table;
    if (Double.isNaN(t[at])) {
      int part = part(at, x);
      x -= partStarts[part];
      t = partTable;
      at = 4 * part;
    }
    return Math.abs(t[at + 1] + x * (2 * t[at + 2] + x * 3 * t[at + 3])) * scale;
  }

  /** Halves the cells of one side until the volume lies in one, and goes straight through it. */
  private double about(double volume) {
    boolean lower = volume <= startOf(Octaves.CELLS - 1, true);
    int low = 0;
    int high = Octaves.CELLS - 1;
    while (high - low > 1) {
      int middle = (low + high) >>> 1;
      if (lower == (startOf(middle, lower) <= volume)) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double from = startOf(low, lower);
    double to = startOf(high, lower);
    double part = to == from ? 0 : (volume - from) / (to - from);
    double near = Octaves.distance(low);
    double distance = near + part * (Octaves.distance(high) - near);
    return full * (lower ? distance : 1 - distance);
  }

  private double startOf(int cell, boolean lower) {
    int at = 4 * (cell + (lower ? Octaves.CELLS : 0));
    return Double.isNaN(table[at]) ? partTable[4 * (int) table[at + 1]] : table[at];
  }
}
