package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;
import java.util.ArrayList;
import java.util.List;

/**
 * The mass in a vessel against the height of a flat surface, for a bulk density that may grow with
 * depth. Immutable and safe for any thread.
 *
 * <p>{@code M(h) = integral over z from 0 to h of A(z) rho(h - z) dz}, A the cross-section at the
 * height z. Integrated by parts (derived here) with {@code V(z)} the capacity curve and {@code d =
 * h - z} the depth: {@code M(h) = rho(0) V(h) + integral over d from 0 to h of V(h - d) rho'(d)
 * dd}. That form needs no derivative of the curve, so steps and kinks of the vessel do no harm, and
 * what the curve holds at height zero (a heel) counts with the density at the depth h.
 *
 * <p>A constant density needs no integral: the mass is exact. Otherwise the stated error is the sum
 * of the absolute differences between the integration rule on every cell and on its halves, which
 * errs on the safe side for smooth pieces; refinement stops at {@value #RELATIVE_ERROR} of the mass
 * or at a fixed number of cells, and then the result says so.
 */
public final class MassCurve {

  /** Error relative to the mass at which refinement stops. */
  public static final double RELATIVE_ERROR = 1e-9;

  private final CapacityCurve vessel;
  private final BulkDensity density;

  private MassCurve(CapacityCurve vessel, BulkDensity density) {
    this.vessel = Check.present("MassCurve.vessel", vessel, "give the vessel");
    this.density = Check.present("MassCurve.density", density, "give the bulk density");
  }

  /**
   * A mass with its numerical error.
   *
   * @param kilograms mass, zero or more
   * @param errorKilograms estimate of the error of the integration alone, zero or more; density and
   *     level have errors of their own, usually far larger
   * @param converged whether the error asked for was reached within the cap on the work
   */
  public record Mass(double kilograms, double errorKilograms, boolean converged) {}

  /** Returns the mass curve of this density in this vessel. */
  public static MassCurve of(CapacityCurve vessel, BulkDensity density) {
    return new MassCurve(vessel, density);
  }

  /**
   * Returns the mass below a flat surface.
   *
   * @param heightMetres height of the surface above the datum; below zero counts as zero, above the
   *     full height as full
   * @throws IllegalArgumentException if {@code heightMetres} is NaN
   */
  public Mass atHeight(double heightMetres) {
    double volume = vessel.volumeCubicMetres(heightMetres);
    double height = Math.max(0, Math.min(heightMetres, vessel.maxHeightMetres()));
    double loose = density.atSurface() * volume;
    if (density instanceof ConstantDensity || height == 0) {
      return new Mass(loose, 0, true);
    }
    return packed(height, loose);
  }

  /**
   * Returns the mass of a volume that lies in this vessel with a flat surface.
   *
   * @param volumeCubicMetres below zero counts as zero, above the capacity as full
   * @throws IllegalArgumentException if {@code volumeCubicMetres} is NaN
   */
  public Mass ofVolume(double volumeCubicMetres) {
    return atHeight(vessel.heightMetres(volumeCubicMetres));
  }

  /** Returns the mass when full. */
  public Mass full() {
    return atHeight(vessel.maxHeightMetres());
  }

  private Mass packed(double height, double loose) {
    AdaptiveIntegral.Result gain =
        AdaptiveIntegral.of(
            depth -> vessel.volumeCubicMetres(height - depth) * density.gradientAtDepth(depth),
            breaks(height),
            RELATIVE_ERROR * loose);
    return new Mass(loose + gain.value(), gain.error(), gain.converged());
  }

  private List<Double> breaks(double height) {
    List<Double> breaks = new ArrayList<>();
    breaks.add(0.0);
    density.breakDepthsMetres().stream().filter(depth -> depth < height).forEach(breaks::add);
    breaks.add(height);
    return breaks;
  }
}
