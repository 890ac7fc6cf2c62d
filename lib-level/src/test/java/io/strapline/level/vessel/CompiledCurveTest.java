package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.Refusal;
import io.strapline.level.testing.Refusals;
import io.strapline.level.vessel.SurveyedProfile.AreaAt;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CompiledCurveTest {

  private static final Head FLAT = new Head.Flat();

  private static final Vessel DISHED =
      LyingTank.of(new Shell(2.5, 6), Head.Torispherical.ASME_F_AND_D, new Head.SphericalDish(0.4));

  private static final Vessel SILO =
      StackedVessel.of(
          List.of(
              new CylinderSection(0.3, 0.3),
              new ConeSection(0.3, 3.6, 2.7),
              new CylinderSection(3.6, 8),
              new CylinderSection(1, 0.5),
              new ConeSection(3.6, 0, 0.9)));

  static List<Vessel> vessels() {
    return List.of(
        DISHED,
        SILO,
        new Sphere(12.5),
        new LyingCylinder(2.5, 6),
        StackedVessel.uprightCylinder(6, 18),
        StackedVessel.of(List.of(new ConeSection(0, 2.4, 2.1))),
        LyingTank.of(new Shell(2.5, 0.01), new Head.EccentricConical(3), FLAT),
        TiltedTank.of(new Shell(2, 6), FLAT, FLAT, 3, 0),
        StackedVessel.uprightTank(
            new Shell(2.4, 5), Head.Torispherical.DIN_28013, new Head.SemiEllipsoidal()),
        StackedVessel.rectangularBinOnSlopedFloor(
            new SlopedFloorSection(new Rectangle(3, 2), 1.5, 0.8), 4),
        SurveyedProfile.ofAreas(
            List.of(
                new AreaAt(0, 0),
                new AreaAt(0.5, 3),
                new AreaAt(2, 3),
                new AreaAt(2, 5),
                new AreaAt(3, 1),
                new AreaAt(3.5, 0))));
  }

  /** Evenly, close to both ends and close to every joint: other points than the build looks at. */
  @ParameterizedTest
  @MethodSource("vessels")
  void agreesWithTheExactCurveEverywhere(Vessel vessel) {
    long seed = 8_128;
    Random random = new Random(seed);
    CompiledCurve compiled = CompiledCurve.of(vessel);
    double full = vessel.maxHeightMetres();
    double bound = compiled.boundCubicMetres();
    assertEquals(1e-9 * vessel.capacityCubicMetres(), bound);
    for (int i = 0; i < 20_000; i++) {
      double near = Math.pow(10, -13 * random.nextDouble());
      double height =
          switch (i % 4) {
            case 0 -> full * random.nextDouble();
            case 1 -> full * near;
            case 2 -> full * (1 - near);
            default -> aroundAJoint(vessel, random, near);
          };
      double difference =
          Math.abs(vessel.volumeCubicMetres(height) - compiled.volumeCubicMetres(height));
      assertTrue(
          difference <= bound,
          () -> vessel + " at " + height + ": " + difference + ", seed " + seed);
    }
    assertTrue(compiled.deviationCubicMetres() <= bound / 4);
  }

  private static double aroundAJoint(Vessel vessel, Random random, double near) {
    double joint = vessel.maxHeightMetres() / 2;
    if (vessel instanceof StackedVessel stack) {
      joint = 0;
      int count = random.nextInt(stack.sections().size()) + 1;
      for (Section section : stack.sections().subList(0, count)) {
        joint += section.heightMetres();
      }
    }
    return joint + (random.nextBoolean() ? 0.1 : -0.1) * near;
  }

  /** From double to double over each edge between two cells, where two cubics meet. */
  @ParameterizedTest
  @MethodSource("vessels")
  void neverFallsFromCellToCell(Vessel vessel) {
    CompiledCurve compiled = CompiledCurve.of(vessel);
    for (int cell = 0; cell < Octaves.CELLS; cell++) {
      for (double part : new double[] {Octaves.distance(cell), 1 - Octaves.distance(cell)}) {
        double height = part * vessel.maxHeightMetres() * (1 - 8e-16);
        double below = compiled.volumeCubicMetres(height);
        for (int step = 0; step < 16; step++) {
          height = Math.nextUp(height);
          double volume = compiled.volumeCubicMetres(height);
          assertTrue(volume >= below, vessel + " at " + height);
          below = volume;
        }
      }
    }
  }

  /** The height of a volume gives that volume in the exact vessel, within the bound. */
  @ParameterizedTest
  @MethodSource("vessels")
  void heightsHoldTheVolumeInTheExactCurve(Vessel vessel) {
    long seed = 496;
    Random random = new Random(seed);
    CompiledCurve compiled = CompiledCurve.of(vessel);
    for (int i = 0; i < 2_000; i++) {
      double volume = vessel.capacityCubicMetres() * random.nextDouble();
      double exact = vessel.volumeCubicMetres(compiled.heightMetres(volume));
      assertEquals(volume, exact, 1.001 * compiled.boundCubicMetres(), vessel + ", seed " + seed);
    }
  }

  @Test
  void tellsItsSizeAndItsCurve() {
    CompiledCurve smooth = CompiledCurve.of(new Sphere(2));
    assertEquals(2 * Octaves.CELLS, smooth.cells());
    CompiledCurve stepped = CompiledCurve.of(SILO);
    assertTrue(stepped.cells() > 2 * Octaves.CELLS && stepped.cells() < 3 * Octaves.CELLS);
    assertSame(SILO, stepped.exact());
    assertSame(stepped, CompiledCurve.of(stepped));
    assertTrue(stepped.deviationCubicMetres() > 0);
  }

  @Test
  void worksOutManyAtOnce() {
    CompiledCurve compiled = CompiledCurve.of(DISHED);
    double[] heights = {-1, 0, 1e-6, 0.3, 1.25, 2.4999, 2.5, 3};
    double[] out = new double[heights.length];
    compiled.volumes(heights, out);
    for (int i = 0; i < heights.length; i++) {
      assertEquals(compiled.volumeCubicMetres(heights[i]), out[i]);
    }
    double[] same = heights.clone();
    compiled.volumes(same, same);
    assertArrayEquals(out, same);
  }

  @Test
  void refusesArraysThatDoNotMatchAndNotANumber() {
    CompiledCurve compiled = CompiledCurve.of(new Sphere(2));
    Refusals.assertRefused(
        "CompiledCurve.out.length", () -> compiled.volumes(new double[3], new double[2]));
    double[] out = new double[2];
    Refusals.assertRefused(
        "CompiledCurve.height", () -> compiled.volumes(new double[] {1, Double.NaN}, out));
    assertEquals(compiled.capacityCubicMetres() / 2, out[0], compiled.boundCubicMetres());
  }

  /** A curve that breaks the contract by a jump in its volume. */
  private record Jump() implements CapacityCurve {
    @Override
    public double maxHeightMetres() {
      return 3;
    }

    @Override
    public double capacityCubicMetres() {
      return 4;
    }

    @Override
    public double volumeCubicMetres(double heightMetres) {
      double height = Math.min(Math.max(heightMetres, 0), 3);
      return height > 1.1 ? height + 1 : height;
    }

    @Override
    public double heightMetres(double volumeCubicMetres) {
      return Math.min(volumeCubicMetres, 3);
    }
  }

  @Test
  void refusesACurveThatJumps() {
    String message = Refusal.of(() -> CompiledCurve.of(new Jump()));
    assertTrue(message.contains("CompiledCurve.curve") && message.contains("jump"), message);
  }

  @Nested
  class OfADishedLyingTank extends CapacityCurveContract {
    private static final CompiledCurve COMPILED = CompiledCurve.of(DISHED);

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }

  @Nested
  class OfASphere extends CapacityCurveContract {
    private static final CompiledCurve COMPILED = CompiledCurve.of(new Sphere(12.5));

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }

  @Nested
  class OfASiloWithSteps extends CapacityCurveContract {
    private static final CompiledCurve COMPILED = CompiledCurve.of(SILO);

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }

  @Nested
  class OfAnEccentricCone extends CapacityCurveContract {
    private static final CompiledCurve COMPILED =
        CompiledCurve.of(LyingTank.of(new Shell(3, 1e-6), new Head.EccentricConical(3), FLAT));

    @Override
    protected CapacityCurve curve() {
      return COMPILED;
    }
  }
}
