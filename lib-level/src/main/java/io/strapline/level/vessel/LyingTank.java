package io.strapline.level.vessel;

/**
 * A cylindrical tank that lies level on its side, with a head at each end. The datum is the lowest
 * line of the shell. Immutable and safe for any thread.
 *
 * <p>V = circular segment x shell length + what each head holds; the formulas stand at {@link
 * CircleSegment} and the forms of the heads. Each part is accurate relative to itself from the film
 * at the bottom on; the quadratures used for conical, spherical and torispherical heads leave
 * errors below the rounding errors.
 */
public final class LyingTank implements Vessel {

  private final Shell shell;
  private final Head left;
  private final Head right;
  private final LyingHead leftHead;
  private final LyingHead rightHead;
  private final double shellVolume;
  private final double capacity;

  private LyingTank(Shell shell, Head left, Head right) {
    double diameter = shell.diameterMetres();
    this.shell = shell;
    this.left = left;
    this.right = right;
    leftHead = new LyingHead(left, diameter);
    rightHead = new LyingHead(right, diameter);
    shellVolume = Math.PI / 4 * diameter * diameter * shell.lengthMetres();
    capacity = shellVolume + leftHead.volume() + rightHead.volume();
  }

  /**
   * Returns the tank.
   *
   * @param shell tangent line to tangent line
   * @param left head at one end
   * @param right head at the other end
   * @throws IllegalArgumentException if a head cannot have the diameter of the shell
   */
  public static LyingTank of(Shell shell, Head left, Head right) {
    return new LyingTank(shell, left, right);
  }

  /** Returns the straight part. */
  public Shell shell() {
    return shell;
  }

  /** Returns the head at one end. */
  public Head left() {
    return left;
  }

  /** Returns the head at the other end. */
  public Head right() {
    return right;
  }

  @Override
  public double maxHeightMetres() {
    return shell.diameterMetres();
  }

  @Override
  public double capacityCubicMetres() {
    return capacity;
  }

  @Override
  public double volumeCubicMetres(double heightMetres) {
    double diameter = shell.diameterMetres();
    double height = Dimensions.clamp("LyingTank.height", heightMetres, "m", diameter);
    // Each term never falls, and neither does a rounded sum of such terms.
    return shellVolume * CircleSegment.part(height / diameter)
        + leftHead.filled(height)
        + rightHead.filled(height);
  }

  @Override
  public double surfaceSquareMetres(double heightMetres) {
    double diameter = shell.diameterMetres();
    double height = Dimensions.clamp("LyingTank.height", heightMetres, "m", diameter);
    return 2 * Math.sqrt(height * (diameter - height)) * shell.lengthMetres()
        + leftHead.surface(height)
        + rightHead.surface(height);
  }

  @Override
  public double heightMetres(double volumeCubicMetres) {
    double volume = Dimensions.clamp("LyingTank.volume", volumeCubicMetres, "m3", capacity);
    if (volume == 0 || volume == capacity) {
      return volume == 0 ? 0 : maxHeightMetres();
    }
    HeightSearch search =
        new HeightSearch(
            this::volumeCubicMetres, this::surfaceSquareMetres, maxHeightMetres(), Grid.STEP);
    return search.lowest(volume, maxHeightMetres() * LyingCylinder.about(volume / capacity));
  }

  @Override
  public String describe() {
    String ends =
        left.equals(right)
            ? "both heads " + left.describe()
            : "heads: " + left.describe() + "; " + right.describe();
    return "lying tank, diameter "
        + Dimensions.text(shell.diameterMetres())
        + ", "
        + Dimensions.text(shell.lengthMetres())
        + " between tangent lines, "
        + ends;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof LyingTank that
        && shell.equals(that.shell)
        && left.equals(that.left)
        && right.equals(that.right);
  }

  @Override
  public int hashCode() {
    return 31 * (31 * shell.hashCode() + left.hashCode()) + right.hashCode();
  }

  @Override
  public String toString() {
    return describe();
  }
}
