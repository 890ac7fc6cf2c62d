package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusals;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LyingTankTest {

  private static final Shell SHELL = new Shell(2.5, 6);

  static List<CsvRow> rows() {
    return CsvRows.read(LyingTankTest.class, "horizontal_cylinder.csv");
  }

  private static LyingTank tank(CsvRow row) {
    return new LyingCylinder(row.number("diameter_m"), row.number("shell_length_m"))
        .withHeads(CheckHeads.of(row, "left"), CheckHeads.of(row, "right"));
  }

  private static LyingTank tank(Head head) {
    return LyingTank.of(SHELL, head, head);
  }

  @Test
  void allHundredAndEightyNineRowsAreChecked() {
    assertEquals(189, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithPublishedAndIntegratedVolumes(CsvRow row) {
    CheckRows.check(row, tank(row));
  }

  static List<Head> heads() {
    return List.of(
        new Head.Conical(0.7),
        new Head.EccentricConical(0.7),
        new Head.Hemispherical(),
        new Head.SemiEllipsoidal(),
        new Head.SphericalDish(0.02),
        new Head.SphericalDish(0.4),
        new Head.SphericalDish(1.2),
        new Head.SphericalDish(1.2499),
        new Head.SphericalDish(1.25),
        Head.Torispherical.ASME_F_AND_D,
        Head.Torispherical.DIN_28011,
        Head.Torispherical.DIN_28013,
        new Head.Torispherical(0.5, 0.1),
        new Head.Torispherical(0.501, 0.3),
        new Head.Torispherical(1, 0.45),
        new Head.Torispherical(10, 0.45),
        new Head.Torispherical(3, 1e-4));
  }

  /**
   * The head's volume by another way: a sum over many level slices of the surface by Simpson's
   * rule, in the angle whose cosine is the height, in which the surface is smooth at both ends.
   */
  @ParameterizedTest
  @MethodSource("heads")
  void volumeIsTheSumOfTheLevelSurfaces(Head head) {
    LyingTank tank = tank(head);
    for (double end : new double[] {1e-6, 0.01, 0.2, 0.5, 0.8, 0.99}) {
      double height = 2.5 * end;
      double volume = tank.volumeCubicMetres(height);
      double top = 2 * Math.asin(Math.sqrt(end));
      int steps = 4_000;
      double sum = 0;
      for (int i = 0; i <= steps; i++) {
        double angle = top * i / steps;
        double half = Math.sin(angle / 2);
        double surface = tank.surfaceSquareMetres(2.5 * half * half);
        int weight = i == 0 || i == steps ? 1 : i % 2 == 1 ? 4 : 2;
        sum += weight * surface * 1.25 * Math.sin(angle);
      }
      // Where the liquid reaches a crown the surface bends, and Simpson's rule is off by 1e-9.
      assertEquals(volume, sum * top / steps / 3, 1e-8 * volume, head + " at " + end);
    }
  }

  /** Lying or standing, a full head holds the same: two formulas that share nothing. */
  @ParameterizedTest
  @MethodSource("heads")
  void halfFullHeadHoldsHalfOfTheStandingHead(Head head) {
    LyingHead lying = new LyingHead(head, 2.5);
    double whole = HeadSection.bottom(head, 2.5).volumeBelow(1e9);
    if (!(head instanceof Head.EccentricConical)) {
      double justBelow = lying.filled(1.25 * (1 - 1e-10));
      assertEquals(whole / 2, justBelow, 1e-9 * whole);
      double straight = lying.surface(1.25) * 1.25e-10;
      assertEquals(whole / 2 - straight, justBelow, 1e-12 * whole, head.toString());
    }
    assertEquals(whole, lying.filled(2.5), 1e-12 * whole);
  }

  /** The deepest dish is a hemisphere, and so is a head with a crown of half the diameter. */
  @ParameterizedTest
  @MethodSource("rows")
  void hemisphereIsTheLimitOfDishAndTorisphericalHead(CsvRow row) {
    if (row.text("left_head").equals("hemispherical")) {
      double diameter = row.number("diameter_m");
      Shell shell = new Shell(diameter, row.number("shell_length_m"));
      Head dish = new Head.SphericalDish(diameter / 2);
      CheckRows.check(row, LyingTank.of(shell, dish, dish));
      Head tori = new Head.Torispherical(0.5, 0.2);
      CheckRows.check(row, LyingTank.of(shell, tori, tori));
    }
  }

  @Test
  void flatHeadsGiveTheFlatCylinder() {
    LyingTank tank = tank(new Head.Flat());
    LyingCylinder cylinder = new LyingCylinder(2.5, 6);
    for (int i = 0; i <= 100; i++) {
      double height = 2.5 * i / 100;
      assertEquals(cylinder.volumeCubicMetres(height), tank.volumeCubicMetres(height));
    }
  }

  @Test
  void refusesAHeadThatItsShellCannotHave() {
    Refusals.assertRefused("Head.SphericalDish.depth", () -> tank(new Head.SphericalDish(1.26)));
    Refusals.assertRefused("Head.Ellipsoidal.depth", () -> tank(new Head.Ellipsoidal(2.6)));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "lying tank, diameter 2.5 m, 6 m between tangent lines, both heads 2:1 ellipsoidal",
        tank(new Head.SemiEllipsoidal()).describe());
    assertEquals(
        "lying tank, diameter 2.5 m, 6 m between tangent lines, heads: flat; eccentric cone 0.7 m"
            + " deep",
        LyingTank.of(SHELL, new Head.Flat(), new Head.EccentricConical(0.7)).toString());
  }

  @Test
  void isEqualToAnotherOfTheSameParts() {
    LyingTank one = tank(new Head.Conical(0.7));
    assertEquals(one, tank(new Head.Conical(0.7)));
    assertEquals(one.hashCode(), tank(new Head.Conical(0.7)).hashCode());
    assertNotEquals(one, tank(new Head.Conical(0.8)));
    assertTrue(one.shell().equals(SHELL) && one.left().equals(one.right()));
  }

  @Nested
  class WithCones extends VesselContract {
    @Override
    protected Vessel curve() {
      return LyingTank.of(SHELL, new Head.Conical(0.7), new Head.Conical(2));
    }
  }

  @Nested
  class WithAnEccentricCone extends VesselContract {
    @Override
    protected Vessel curve() {
      return LyingTank.of(
          new Shell(2.5, 1e-3), new Head.EccentricConical(0.7), new Head.SemiEllipsoidal());
    }
  }

  @Nested
  class WithSphericalDishes extends VesselContract {
    @Override
    protected Vessel curve() {
      return LyingTank.of(
          new Shell(2.5, 0.1), new Head.SphericalDish(0.4), new Head.SphericalDish(1.2));
    }
  }

  @Nested
  class WithTorisphericalHeads extends VesselContract {
    @Override
    protected Vessel curve() {
      return LyingTank.of(SHELL, Head.Torispherical.ASME_F_AND_D, Head.Torispherical.DIN_28013);
    }
  }
}
