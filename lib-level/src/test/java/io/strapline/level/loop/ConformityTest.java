package io.strapline.level.loop;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.apache.commons.math3.optim.linear.LinearConstraint;
import org.apache.commons.math3.optim.linear.LinearConstraintSet;
import org.apache.commons.math3.optim.linear.LinearObjectiveFunction;
import org.apache.commons.math3.optim.linear.NonNegativeConstraint;
import org.apache.commons.math3.optim.linear.Relationship;
import org.apache.commons.math3.optim.linear.SimplexSolver;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.junit.jupiter.api.Test;

class ConformityTest {

  /** Least e with |y - a - b x| <= e at all points; {@code fixed} keeps the line on the first. */
  private static double byLinearProgram(double[] x, double[] y, boolean fixed) {
    List<LinearConstraint> rules = new ArrayList<>();
    for (int i = 0; i < x.length; i++) {
      double v = x[i] / 100;
      rules.add(new LinearConstraint(new double[] {1, v, -1}, Relationship.LEQ, y[i]));
      rules.add(new LinearConstraint(new double[] {1, v, 1}, Relationship.GEQ, y[i]));
    }
    if (fixed) {
      rules.add(new LinearConstraint(new double[] {1, x[0] / 100, 0}, Relationship.EQ, y[0]));
    }
    return new SimplexSolver()
        .optimize(
            new LinearObjectiveFunction(new double[] {0, 0, 1}, 0),
            new LinearConstraintSet(rules),
            GoalType.MINIMIZE,
            new NonNegativeConstraint(false))
        .getValue();
  }

  /** Reference: the linear program of commons-math3 3.6.1, SimplexSolver. */
  @Test
  void findsTheSameDeviationsAsALinearProgram() {
    long seed = 4_711;
    Random random = new Random(seed);
    for (int i = 0; i < 300; i++) {
      int points = 2 + random.nextInt(10);
      double[] x = new double[points];
      double[] y = new double[points];
      for (int k = 0; k < points; k++) {
        x[k] = (k + 0.9 * random.nextDouble()) * 100 / points;
        y[k] = random.nextGaussian();
      }
      Conformity conformity = Conformity.of(x, y);
      String told = "seed " + seed + ", loop " + i;

      assertEquals(byLinearProgram(x, y, false), conformity.independent(), 1e-7, told);
      assertEquals(byLinearProgram(x, y, true), conformity.zeroBased(), 1e-7, told);
      assertTrue(conformity.independent() <= conformity.zeroBased() + 1e-12, told);
      assertTrue(conformity.zeroBased() <= conformity.terminalBased() + 1e-12, told);
    }
  }

  @Test
  void findsNoDeviationOnALineNorBetweenTwoPoints() {
    Conformity line =
        Conformity.of(new double[] {0, 25, 50, 75, 100}, new double[] {-1, -0.5, 0, 0.5, 1});
    Conformity two = Conformity.of(new double[] {0, 100}, new double[] {3, -7});

    assertEquals(0, line.terminalBased(), 1e-15);
    assertEquals(0, line.zeroBased(), 1e-15);
    assertEquals(0, line.independent(), 1e-15);
    assertEquals(new Conformity(0, 0, 0), two);
  }

  // By hand: a bump of 1 in the middle of three points: chord 1, half of it for the free line; the
  // line through the first point balances +d at 50 against -d at 100: d = 1 - s/2 = s, d = 2/3.
  @Test
  void givesTheDeviationsOfABumpInTheMiddle() {
    Conformity bump = Conformity.of(new double[] {0, 50, 100}, new double[] {0, 1, 0});

    assertEquals(1, bump.terminalBased(), 1e-15);
    assertEquals(2.0 / 3, bump.zeroBased(), 1e-15);
    assertEquals(0.5, bump.independent(), 1e-15);
  }
}
