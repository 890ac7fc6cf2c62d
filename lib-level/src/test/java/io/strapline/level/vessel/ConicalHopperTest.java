package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import io.strapline.level.testing.Refusal;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ConicalHopperTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return StackedVessel.uprightCylinderOnCone(new ConeSection(0.4, 6, 3.2), 18);
  }

  static List<CsvRow> rows() {
    return CsvRows.read(ConicalHopperTest.class, "conical_hopper.csv");
  }

  private static ConeSection cone(CsvRow row) {
    return new ConeSection(
        row.number("outlet_diameter_m"), row.number("diameter_m"), row.number("hopper_height_m"));
  }

  @Test
  void allTwentySevenRowsAreChecked() {
    assertEquals(27, rows().size());
  }

  /** An eccentric outlet changes no volume: its rows are checked by the same vessels. */
  @Test
  void rowsWithAnEccentricOutletAreAmongThem() {
    assertTrue(rows().stream().anyMatch(row -> row.number("outlet_offset_m") != 0));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void agreesWithTheReferenceLibrary(CsvRow row) {
    CheckRows.check(
        row, StackedVessel.uprightCylinderOnCone(cone(row), row.number("shell_length_m")));
  }

  /** The file's heights were computed from its half angles and rounded to twelve decimals. */
  @ParameterizedTest
  @MethodSource("rows")
  void theHalfAngleToTheVerticalGivesTheHeight(CsvRow row) {
    double outlet = row.number("outlet_diameter_m");
    double top = row.number("diameter_m");
    double half = row.number("half_angle_deg");
    double height = row.number("hopper_height_m");
    assertEquals(
        height, ConeSection.withHalfAngleToVertical(outlet, top, half).heightMetres(), 1e-11);
    assertEquals(
        height,
        ConeSection.withWallAngleToHorizontal(outlet, top, 90 - half).heightMetres(),
        1e-11);
  }

  /** By hand: tan 45 = 1, tan 60 = root of 3. A roof's slope works downwards alike. */
  @Test
  void anglesAreTakenFromTheReferenceInTheirName() {
    assertEquals(3, ConeSection.withHalfAngleToVertical(0, 6, 45).heightMetres(), 1e-14);
    assertEquals(
        3 * Math.sqrt(3), ConeSection.withWallAngleToHorizontal(0, 6, 60).heightMetres(), 1e-14);
    assertEquals(Math.sqrt(3), ConeSection.withHalfAngleToVertical(0, 6, 60).heightMetres(), 1e-14);
    assertEquals(3, ConeSection.withWallAngleToHorizontal(6, 0, 45).heightMetres(), 1e-14);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -30, 0, 90, 120})
  void refusesAnglesThatMakeNoCone(double bad) {
    String half = Refusal.of(() -> ConeSection.withHalfAngleToVertical(0.4, 6, bad));
    assertTrue(half.contains("halfAngleToVertical = " + bad + " deg"), half);
    assertTrue(half.contains("half the included angle"), half);
    String wall = Refusal.of(() -> ConeSection.withWallAngleToHorizontal(0.4, 6, bad));
    assertTrue(wall.contains("wallAngleToHorizontal = " + bad + " deg"), wall);
  }

  @ParameterizedTest
  @ValueSource(
      doubles = {
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        -1,
        9.9e-7,
        10_000.1
      })
  void refusesImpossibleDimensionsByName(double bad) {
    String outlet = Refusal.of(() -> new ConeSection(bad, 6, 3.2));
    assertTrue(outlet.contains("ConeSection.bottomDiameter = " + bad), outlet);
    String top = Refusal.of(() -> new ConeSection(0.4, bad, 3.2));
    assertTrue(top.contains("ConeSection.topDiameter = " + bad), top);
    String height = Refusal.of(() -> new ConeSection(0.4, 6, bad));
    assertTrue(height.contains("ConeSection.height = " + bad), height);
  }

  @Test
  void refusesAConeThatIsNoneOrUpsideDown() {
    assertTrue(Refusal.of(() -> new ConeSection(0, 0, 3)).contains("both ends"));
    assertTrue(Refusal.of(() -> new ConeSection(0.4, 6, 0)).contains("ConeSection.height"));
    assertTrue(
        Refusal.of(() -> ConeSection.withHalfAngleToVertical(6, 6, 30)).contains("must differ"));
    String message =
        Refusal.of(() -> StackedVessel.uprightCylinderOnCone(new ConeSection(6, 0.4, 3.2), 18));
    assertTrue(message.contains("greater than the outlet's 6 m"), message);
  }

  @Test
  void saysWhatItIs() {
    assertEquals(
        "upright cylinder, diameter 6 m, 18 m high, on a cone 3.2 m high with outlet 0.4 m",
        curve().describe());
    assertEquals(
        "upright cylinder, diameter 6 m, 18 m high, on a closed cone 3.2 m high",
        StackedVessel.uprightCylinderOnCone(new ConeSection(0, 6, 3.2), 18).describe());
  }
}
