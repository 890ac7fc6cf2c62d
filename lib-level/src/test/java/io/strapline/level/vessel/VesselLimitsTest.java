package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Vessels at the limits of their dimensions, alone and together: absurd, but never wrong. */
class VesselLimitsTest {

  private static final List<Head> ANY_DIAMETER =
      List.of(
          new Head.Flat(),
          new Head.Hemispherical(),
          new Head.SemiEllipsoidal(),
          new Head.Conical(1e-6),
          new Head.Conical(1e4),
          new Head.EccentricConical(1e-6),
          new Head.EccentricConical(1e4),
          new Head.Torispherical(0.5, 1e-4),
          new Head.Torispherical(0.5, 0.45),
          new Head.Torispherical(0.5 + 1e-12, 0.3),
          new Head.Torispherical(10, 1e-4),
          new Head.Torispherical(10, 0.45));

  static List<Vessel> vessels() {
    List<Vessel> vessels = new ArrayList<>();
    for (double diameter : new double[] {1e-6, 1, 1e4}) {
      for (double length : new double[] {1e-6, 1e4}) {
        Shell shell = new Shell(diameter, length);
        for (Head head : ANY_DIAMETER) {
          vessels.add(LyingTank.of(shell, head, new Head.Flat()));
          vessels.add(StackedVessel.uprightTank(shell, head, head));
        }
        if (diameter > 1e-6) {
          for (double depth : new double[] {diameter * 1e-6, diameter / 2}) {
            Head dish = new Head.SphericalDish(depth);
            vessels.add(LyingTank.of(shell, dish, dish));
            vessels.add(StackedVessel.uprightTank(shell, dish, dish));
          }
        }
        for (double tilt : new double[] {0, 1e-9, 1e-6, 30}) {
          vessels.add(TiltedTank.of(shell, new Head.Flat(), new Head.Hemispherical(), tilt, 0));
          Head slight = new Head.Ellipsoidal(Math.max(1e-6, diameter * 1e-6));
          vessels.add(TiltedTank.of(shell, slight, new Head.Ellipsoidal(diameter), tilt, length));
        }
      }
    }
    Rectangle plan = new Rectangle(1e4, 1e-6);
    vessels.add(
        StackedVessel.rectangularBinOnSlopedFloor(new SlopedFloorSection(plan, 1e4, 1e-6), 1e-6));
    vessels.add(
        StackedVessel.binOnTransition(
            new TransitionSection(Outline.circle(1e-6), Outline.rectangle(1e4, 1e-6), 1e4), 1e-6));
    return vessels;
  }

  @ParameterizedTest
  @MethodSource("vessels")
  void risesFromEmptyToFullAndBack(Vessel vessel) {
    long seed = 65_537;
    Random random = new Random(seed);
    double full = vessel.maxHeightMetres();
    double capacity = vessel.capacityCubicMetres();
    assertTrue(full > 0 && capacity > 0 && Double.isFinite(capacity), vessel.describe());
    assertEquals(0.0, vessel.volumeCubicMetres(0));
    assertEquals(capacity, vessel.volumeCubicMetres(full), vessel.describe());
    for (int i = 0; i < 60; i++) {
      double near = Math.pow(10, -10 * random.nextDouble());
      double height = full * (i % 2 == 0 ? near : 1 - near);
      double volume = vessel.volumeCubicMetres(height);
      double above = vessel.volumeCubicMetres(height + full * 1e-3 * random.nextDouble());
      assertTrue(volume >= 0 && volume <= above && above <= capacity, vessel + " at " + height);
      double surface = vessel.surfaceSquareMetres(height);
      assertTrue(surface >= 0 && Double.isFinite(surface), vessel + " at " + height);
      double back = vessel.heightMetres(volume);
      assertEquals(volume, vessel.volumeCubicMetres(back), 1e-12 * capacity, vessel.toString());
      // Close under a point at the top the volume is the capacity but for rounding, and full is
      // full.
      assertTrue(
          volume == capacity || back <= height * (1 + 1e-12),
          vessel + " at " + height + ", back " + back);
    }
  }
}
