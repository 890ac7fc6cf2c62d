package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.VolumeUnit;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Wrong volumes that people met in practice; inputs from public questions, results by hand. */
class VesselFieldCasesTest {

  /**
   * A misplaced bracket and whole-number division gave 5082 at depth 75 and 5200 at 90 in a tank of
   * 4000. Right values by the circular segment.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0",
    "25, 782.0044",
    "50, 2000",
    "75, 3217.9956",
    "90, 3791.8239",
    "100, 4000",
  })
  void lyingTankOfFourThousandNeverHoldsMore(double depth, double volume) {
    double length = 4000 / (Math.PI / 4 * 100 * 100);
    LyingCylinder tank = new LyingCylinder(100, length);
    assertEquals(volume, tank.volumeCubicMetres(depth), 0.001);
    assertTrue(tank.volumeCubicMetres(depth) <= 4000);
  }

  /** The arctangent form divides by zero at half full. Tank of 4 ft and 3000 US gal, dip 22 in. */
  @Test
  void dipOfTwentyTwoInchesInATankOfFourFeet() {
    double diameter = LengthUnit.FOOT.toSi(4);
    double capacity = VolumeUnit.US_GALLON.toSi(3000);
    LyingCylinder tank =
        new LyingCylinder(diameter, capacity / (Math.PI / 4 * diameter * diameter));
    double volume = tank.volumeCubicMetres(LengthUnit.INCH.toSi(22));
    assertEquals(1341.03, VolumeUnit.US_GALLON.fromSi(volume), 0.005);
    assertEquals(0, tank.volumeCubicMetres(0));
    assertEquals(tank.capacityCubicMetres() / 2, tank.volumeCubicMetres(diameter / 2));
    assertEquals(3000, VolumeUnit.US_GALLON.fromSi(tank.volumeCubicMetres(diameter)), 1e-9);
  }

  /** A height a rounding error outside is at the end, not outside. */
  @Test
  void heightsAHairOutsideAreSnappedToTheEnd() {
    Sphere tank = new Sphere(12.5);
    assertTrue(tank.covers(12.5 + 1e-12) && tank.covers(-1e-12));
    assertEquals(tank.capacityCubicMetres(), tank.volumeCubicMetres(12.5 + 1e-12));
    assertEquals(0, tank.volumeCubicMetres(-1e-12));
  }

  /** Radius 3, length 10: which depth holds 240 of 282.743? */
  @Test
  void depthOfAGivenVolume() {
    LyingCylinder tank = new LyingCylinder(6, 10);
    assertEquals(282.743, tank.capacityCubicMetres(), 5e-4);
    assertEquals(4.748599, tank.heightMetres(240), 5e-7);
    assertEquals(240, tank.volumeCubicMetres(tank.heightMetres(240)), 240e-9);
  }

  /**
   * The included angle at the apex taken for the wall angle: 60 degrees included are 30 to the
   * vertical and 60 to the horizontal, and a third is a third, not 0.3333. By hand: r = 1, tan 60 =
   * root of 3, V = pi root(3) / 3.
   */
  @Test
  void coneByAngleNamesItsReference() {
    double exact = Math.PI * Math.sqrt(3) / 3;
    assertEquals(
        exact, ConeSection.withHalfAngleToVertical(0, 2, 60 / 2.0).volumeCubicMetres(), 1e-14);
    assertEquals(exact, ConeSection.withWallAngleToHorizontal(0, 2, 60).volumeCubicMetres(), 1e-14);
  }

  /** 4 x 3 m to 1 x 0.5 m over 2 m holds 10.000 m3; the frustum formula says 9.966. */
  @Test
  void hopperOfTwoProportionsIsNoFrustum() {
    PyramidSection hopper = new PyramidSection(new Rectangle(1, 0.5), new Rectangle(4, 3), 2);
    assertEquals(10, hopper.volumeCubicMetres(), 1e-14);
    // Half way up the plan is 2.5 x 1.75; Simpson's rule is exact for a quadratic area.
    double simpson = 1 / 6.0 * (0.5 + 4 * (1.75 * 1.125) + 2.5 * 1.75);
    assertEquals(simpson, hopper.volumeBelow(1), 1e-15);
  }

  /** Truncated cone, 3.5 m high, radii 2.5 and 4.9 m: 155.807 m3, 5502 ft3. */
  @Test
  void truncatedCone() {
    for (ConeSection cone : List.of(new ConeSection(5, 9.8, 3.5), new ConeSection(9.8, 5, 3.5))) {
      assertEquals(155.807, cone.volumeCubicMetres(), 5e-4);
      assertEquals(5502, VolumeUnit.CUBIC_FOOT.fromSi(cone.volumeCubicMetres()), 0.5);
    }
  }
}
