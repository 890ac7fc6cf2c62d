package io.strapline.level.vessel;

import io.strapline.level.internal.Check;

/**
 * A head as the bottom or the top of an upright tank. Immutable and safe for any thread.
 *
 * <p>From its narrow end up to {@link HeadForm#apexReach} the volume comes from the apex, beyond it
 * from the tangent line, whichever is exact near empty; the other side is the whole less the rest.
 */
public final class HeadSection implements Section {

  private final Head head;
  private final double diameter;
  private final boolean onTop;
  private final HeadForm form;
  private final double tip;

  private HeadSection(Head head, double diameterMetres, boolean onTop) {
    this.head = head;
    this.diameter = diameterMetres;
    this.onTop = onTop;
    this.form = HeadForm.of(head, diameterMetres);
    if (!(form.depth() > 0)) {
      throw Check.error(
          "HeadSection.depth",
          form.depth(),
          "m",
          "must be greater than zero",
          "leave a flat head out of the stack");
    }
    tip = form.nearApex(form.apexReach());
  }

  /**
   * Returns a head that closes a tank below.
   *
   * @param head not flat
   * @param diameterMetres inside diameter of the shell, in [1e-6, 1e4]
   * @throws IllegalArgumentException if the head is flat or cannot have this diameter
   */
  public static HeadSection bottom(Head head, double diameterMetres) {
    return new HeadSection(head, diameterMetres, false);
  }

  /**
   * Returns a head that closes a tank above.
   *
   * @param head not flat
   * @param diameterMetres inside diameter of the shell, in [1e-6, 1e4]
   * @throws IllegalArgumentException if the head is flat or cannot have this diameter
   */
  public static HeadSection top(Head head, double diameterMetres) {
    return new HeadSection(head, diameterMetres, true);
  }

  @Override
  public double heightMetres() {
    return form.depth();
  }

  @Override
  public double volumeCubicMetres() {
    return form.volume();
  }

  @Override
  public double volumeBelow(double aboveBottomMetres) {
    double z = Math.min(Math.max(aboveBottomMetres, 0.0), heightMetres());
    if (z == 0 || z == heightMetres()) {
      return z == 0 ? 0 : form.volume();
    }
    return onTop ? belowOnTop(z) : belowAtBottom(z);
  }

  private double belowAtBottom(double z) {
    if (z <= form.apexReach()) {
      return Math.min(form.nearApex(z), tip);
    }
    return Math.max(form.volume() - form.nearRim(heightMetres() - z), tip);
  }

  private double belowOnTop(double z) {
    double base = form.volume() - tip;
    if (heightMetres() - z >= form.apexReach()) {
      return Math.min(form.nearRim(z), base);
    }
    return Math.max(form.volume() - form.nearApex(heightMetres() - z), base);
  }

  @Override
  public double areaAt(double aboveBottomMetres) {
    double z = Math.min(Math.max(aboveBottomMetres, 0.0), heightMetres());
    return form.areaNearApex(onTop ? heightMetres() - z : z);
  }

  @Override
  public double aboutHeightOf(double cubicMetres) {
    double part = Math.min(cubicMetres / form.volume(), 1.0);
    return heightMetres() * (onTop ? 1 - Math.sqrt(1 - part) : Math.sqrt(part));
  }

  @Override
  public String describe() {
    return (onTop ? "top head " : "bottom head ")
        + head.describe()
        + ", diameter "
        + Dimensions.text(diameter)
        + ", "
        + Dimensions.text(heightMetres())
        + " high";
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof HeadSection that
        && head.equals(that.head)
        && diameter == that.diameter
        && onTop == that.onTop;
  }

  @Override
  public int hashCode() {
    return 31 * head.hashCode() + Double.hashCode(diameter) + (onTop ? 1 : 0);
  }

  @Override
  public String toString() {
    return describe();
  }
}
