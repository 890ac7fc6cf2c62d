package io.strapline.level.vessel;

/**
 * A head of a lying tank at all fillings. Immutable.
 *
 * <p>The lower half comes from the form, the upper one is the whole less the empty part, so that no
 * digits are lost at either end; both on the {@link Grid}, so that the volume never falls.
 */
final class LyingHead {

  private final HeadForm form;
  private final double diameter;

  LyingHead(Head head, double diameter) {
    this.form = HeadForm.of(head, diameter);
    this.diameter = diameter;
  }

  double volume() {
    return form.volume();
  }

  /**
   * Returns the filled volume.
   *
   * @param depth above the lowest line of the shell, in [0, diameter]
   */
  double filled(double depth) {
    if (depth == 0 || depth == diameter) {
      return depth == 0 ? 0 : volume();
    }
    if (!form.symmetricLying()) {
      return depth <= diameter / 2
          ? form.lowerLying(Math.min(Grid.coarse(depth), diameter / 2))
          : form.lowerLying(depth);
    }
    return depth <= diameter / 2 ? lower(depth) : volume() - lower(diameter - depth);
  }

  private double lower(double depth) {
    double half = volume() / 2;
    return depth == diameter / 2 ? half : Math.min(half, form.lowerLying(onGrid(depth)));
  }

  private double onGrid(double depth) {
    return Math.min(Grid.coarse(depth), diameter / 2);
  }

  double surface(double depth) {
    return form.surfaceLying(depth);
  }
}
