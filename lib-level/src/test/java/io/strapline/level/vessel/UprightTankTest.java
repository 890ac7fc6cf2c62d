package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusals;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class UprightTankTest {

  static List<CsvRow> rows() {
    return CsvRows.read(UprightTankTest.class, "vertical_cylinder.csv");
  }

  private static Vessel vessel(CsvRow row) {
    return StackedVessel.uprightTank(
        new Shell(row.number("diameter_m"), row.number("shell_length_m")),
        CheckHeads.of(row, "bottom"),
        CheckHeads.of(row, "top"));
  }

  @Test
  void allHundredAndSevenRowsAreChecked() {
    assertEquals(107, rows().size());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithTheReferenceLibraryAndIntegration(CsvRow row) {
    CheckRows.check(row, vessel(row));
  }

  static List<Head> heads() {
    return List.of(
        new Head.Conical(0.7),
        new Head.EccentricConical(0.7),
        new Head.Hemispherical(),
        new Head.SemiEllipsoidal(),
        new Head.Ellipsoidal(2),
        new Head.SphericalDish(0.3),
        new Head.SphericalDish(1.2),
        Head.Torispherical.ASME_F_AND_D,
        Head.Torispherical.DIN_28013,
        new Head.Torispherical(0.5, 0.1),
        new Head.Torispherical(10, 0.45));
  }

  /** A top head is the bottom head turned over: filled and empty parts change places. */
  @ParameterizedTest
  @MethodSource("heads")
  void topHeadIsTheBottomHeadTurnedOver(Head head) {
    HeadSection bottom = HeadSection.bottom(head, 2.4);
    HeadSection top = HeadSection.top(head, 2.4);
    double depth = bottom.heightMetres();
    assertEquals(depth, top.heightMetres());
    assertEquals(bottom.volumeCubicMetres(), top.volumeCubicMetres());
    for (int i = 0; i <= 1000; i++) {
      double z = depth * i / 1000;
      double sum = bottom.volumeBelow(z) + top.volumeBelow(depth - z);
      assertEquals(bottom.volumeCubicMetres(), sum, 1e-12 * bottom.volumeCubicMetres());
      assertEquals(bottom.areaAt(z), top.areaAt(depth - z), 1e-12);
    }
  }

  /** A straight flange is shell: the formula of the shell holds for it. */
  @Test
  void straightFlangeLengthensTheShell() {
    Shell plain = new Shell(2.4, 5);
    Head head = Head.Torispherical.DIN_28011;
    double without = StackedVessel.uprightTank(plain, head, head).capacityCubicMetres();
    double with =
        StackedVessel.uprightTank(plain.withStraightFlanges(0.04, 0.06), head, head)
            .capacityCubicMetres();
    assertEquals(Math.PI * 1.2 * 1.2 * 0.1, with - without, 1e-12);
  }

  @Test
  void refusesAFlatHeadAsASectionByItself() {
    Refusals.assertRefused("HeadSection.depth", () -> HeadSection.bottom(new Head.Flat(), 2));
    Refusals.assertRefused("HeadSection.depth", () -> HeadSection.top(new Head.Flat(), 2));
  }

  @Test
  void flatHeadsLeaveTheShell() {
    assertEquals(
        StackedVessel.uprightCylinder(2.4, 5),
        StackedVessel.uprightTank(new Shell(2.4, 5), new Head.Flat(), new Head.Flat()));
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "3 sections, bottom to top: bottom head torispherical, crown 0.8 D, knuckle 0.154 D,"
            + " diameter 2.4 m, 0.611 m high; cylinder, diameter 2.4 m, 5 m high; top head 2:1"
            + " ellipsoidal, diameter 2.4 m, 0.6 m high",
        StackedVessel.uprightTank(
                new Shell(2.4, 5), Head.Torispherical.DIN_28013, new Head.SemiEllipsoidal())
            .describe());
  }

  @Nested
  class OnTorisphericalHeads extends VesselContract {
    @Override
    protected Vessel curve() {
      return StackedVessel.uprightTank(
          new Shell(2.4, 1), Head.Torispherical.ASME_F_AND_D, Head.Torispherical.DIN_28013);
    }
  }

  @Nested
  class OnSphericalDishes extends VesselContract {
    @Override
    protected Vessel curve() {
      return StackedVessel.uprightTank(
          new Shell(2.4, 1), new Head.SphericalDish(0.3), new Head.SphericalDish(1));
    }
  }

  @Nested
  class OnEllipsoidalHeads extends VesselContract {
    @Override
    protected Vessel curve() {
      return StackedVessel.uprightTank(
          new Shell(2.4, 1), new Head.SemiEllipsoidal(), new Head.Ellipsoidal(2));
    }
  }

  /** Heads without any shell between them, the wrong way round: near empty the rim counts. */
  @Nested
  class TopHeadsOnly extends VesselContract {
    @Override
    protected Vessel curve() {
      return StackedVessel.of(
          List.of(
              HeadSection.top(new Head.SphericalDish(0.4), 2.4),
              HeadSection.top(Head.Torispherical.DIN_28011, 2),
              HeadSection.bottom(new Head.Hemispherical(), 1),
              HeadSection.top(new Head.Hemispherical(), 1)));
    }
  }
}
