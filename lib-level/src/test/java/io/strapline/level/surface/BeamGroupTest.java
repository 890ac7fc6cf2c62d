package io.strapline.level.surface;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import io.strapline.level.vessel.Rectangle;
import io.strapline.level.vessel.StackedVessel;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class BeamGroupTest {

  private static final Instant START = Instant.parse("2025-03-01T06:00:00Z");
  private static final Quality LOST = Quality.bad(Cause.NO_RETURN);
  private static final BeamAgreement AGREEMENT = new BeamAgreement(0.1, 35, 1, 0.02);

  private static List<GroupBeam> beams(double height, PlanPoint... places) {
    return IntStream.range(0, places.length)
        .mapToObj(i -> new GroupBeam("LT-" + (i + 1), Beam.plumb(height, places[i])))
        .toList();
  }

  private static final PlanPoint[] FOUR = {
    PlanPoint.CENTRE, PlanPoint.polar(2.4, 0), PlanPoint.polar(2.4, 120), PlanPoint.polar(2.4, 240)
  };

  private static BeamGroup silo(GroupMethod method, PlanPoint... places) {
    return BeamGroup.of(
        new BeamGroupSettings(Vessels.SILO, beams(21.5, places), method, AGREEMENT));
  }

  /** What beams at these places see of a surface. */
  private static List<Reading> levels(Surface surface, PlanPoint... places) {
    List<Reading> levels = new ArrayList<>();
    for (PlanPoint place : places) {
      levels.add(Reading.good(surface.heightMetres(place), START));
    }
    return levels;
  }

  private static List<Reading> with(List<Reading> levels, int index, Quality quality) {
    List<Reading> changed = new ArrayList<>(levels);
    double value = quality.isBad() ? 0 : levels.get(index).value();
    changed.set(index, new Reading(value, quality, levels.get(index).time()));
    return changed;
  }

  private static PlaneSurface tilted(double level) {
    return new PlaneSurface(level, 0.3, -0.2);
  }

  private static ConeSurface heap(double apex) {
    return ConeSurface.heap(PlanPoint.CENTRE, apex, 32);
  }

  /**
   * By hand: the middle line splits a rectangle of 4 m at x = (-1 + 0.5) / 2: 1.75 m and 2.25 m.
   */
  @Test
  void areaSharesOfTwoBeamsInABinAreSplitHalfWayBetweenThem() {
    SolidsVessel bin = SolidsVessel.of(StackedVessel.rectangularBin(new Rectangle(4, 3), 10));
    List<GroupBeam> two = beams(10, new PlanPoint(-1, 0.3), new PlanPoint(0.5, 0.3));
    BeamGroup group =
        BeamGroup.of(new BeamGroupSettings(bin, two, GroupMethod.AREA_WEIGHTED, AGREEMENT));
    BeamGroupSnapshot snapshot =
        group.update(List.of(Reading.good(5, START), Reading.good(5.4, START)));
    assertEquals(1.75 / 4, snapshot.shares().get(0), 1e-12);
    assertEquals(2.25 / 4, snapshot.shares().get(1), 1e-12);
    double expected = 5 + 0.4 * 2.25 / 4;
    assertEquals(expected, snapshot.equivalentLevel().value(), 1e-11);
    assertEquals(12 * expected, snapshot.volume().value(), 1e-9);
    assertEquals(5.4, snapshot.highest().value());
    assertEquals(5, snapshot.lowest().value());
  }

  /** By hand: three beams at 120 degrees share what the centre leaves; its cell is a triangle. */
  @Test
  void areaSharesInASiloAddUpToOne() {
    double[] shares = GroupEstimate.shares(Vessels.SILO.plan(), List.of(FOUR));
    // Bisectors at 1.2 m make a triangle with that inscribed circle: area 3 root 3 r^2.
    double triangle = 3 * Math.sqrt(3) * 1.2 * 1.2;
    assertEquals(triangle / (9 * Math.PI), shares[0], 1e-9);
    assertEquals((1 - shares[0]) / 3, shares[1], 1e-9);
    assertEquals(1, shares[0] + shares[1] + shares[2] + shares[3], 1e-12);
  }

  /** Shares by counting the nearest beam over a grid, for random places. */
  @Test
  void areaSharesAgreeWithCounting() {
    long seed = 11;
    Random random = new Random(seed);
    for (SolidsVessel vessel : List.of(Vessels.SILO, Vessels.BIN)) {
      List<PlanPoint> places = new ArrayList<>();
      for (int i = 0; i < 5; i++) {
        places.add(PlanPoint.polar(1.4 * random.nextDouble(), 360 * random.nextDouble()));
      }
      double[] shares = GroupEstimate.shares(vessel.plan(), places);
      double[] counted = counted(vessel.plan(), places);
      for (int i = 0; i < 5; i++) {
        assertEquals(counted[i], shares[i], 2e-3, "seed " + seed + ", " + vessel + ", beam " + i);
      }
    }
  }

  private static double[] counted(Plan plan, List<PlanPoint> places) {
    double[] counts = new double[places.size()];
    int all = 0;
    for (double x = -2.9975; x < 3; x += 0.005) {
      for (double y = -2.9975; y < 3; y += 0.005) {
        PlanPoint at = new PlanPoint(x, y);
        if (plan.contains(at)) {
          counts[nearest(places, at)]++;
          all++;
        }
      }
    }
    for (int i = 0; i < counts.length; i++) {
      counts[i] /= all;
    }
    return counts;
  }

  private static int nearest(List<PlanPoint> places, PlanPoint at) {
    int nearest = 0;
    for (int i = 1; i < places.size(); i++) {
      if (places.get(i).distanceMetres(at) < places.get(nearest).distanceMetres(at)) {
        nearest = i;
      }
    }
    return nearest;
  }

  /** The mean height of a plane over a plan symmetric about the axis is its height there. */
  @Test
  void aFittedPlaneIsExactForATiltedPlane() {
    PlanPoint[] three = {
      PlanPoint.polar(2, 20), PlanPoint.polar(1.5, 170), PlanPoint.polar(2.4, 280)
    };
    BeamGroupSnapshot snapshot =
        silo(GroupMethod.FITTED_PLANE, three).update(levels(tilted(12), three));
    assertEquals(12, snapshot.equivalentLevel().value(), 1e-11);
    assertEquals(Vessels.SILO.curve().volumeCubicMetres(12), snapshot.volume().value(), 1e-9);
    assertEquals(Quality.GOOD, snapshot.volume().quality());
    assertEquals(0.02, snapshot.uncertaintyMetres(), 1e-9);
  }

  /** What a plane does not fit stands in the uncertainty. */
  @Test
  void theMisfitOfThePlaneWidensTheUncertainty() {
    BeamGroupSnapshot snapshot =
        silo(GroupMethod.FITTED_PLANE, FOUR).update(levels(heap(14), FOUR));
    // By hand: levels 0, -d, -d, -d about their mean -3 d / 4 on a level plane: rms d root 3 / 4.
    double d = 2.4 * Math.tan(Math.toRadians(32));
    assertEquals(0.02 + d * Math.sqrt(3) / 4, snapshot.uncertaintyMetres(), 1e-9);
  }

  /** In the hopper each beam's flat part ends at the wall. */
  @ParameterizedTest
  @EnumSource(GroupMethod.class)
  void equalLevelsGiveTheVesselsOwnVolumeInTheHopperToo(GroupMethod method) {
    PlanPoint[] close = {
      PlanPoint.CENTRE,
      PlanPoint.polar(0.8, 0),
      PlanPoint.polar(0.8, 120),
      PlanPoint.polar(0.8, 240)
    };
    for (double level : new double[] {1, 2, 3.1, 3.3, 20}) {
      BeamGroupSnapshot snapshot =
          silo(method, close).update(levels(new FlatSurface(level), close));
      assertEquals(Vessels.SILO.curve().volumeCubicMetres(level), snapshot.volume().value(), 1e-7);
      assertEquals(level, snapshot.equivalentLevel().value(), 1e-7);
    }
  }

  /** The volume must not move because a beam is lost, on a slope or on a heap. */
  @ParameterizedTest
  @CsvSource({
    "AREA_WEIGHTED, 0", "AREA_WEIGHTED, 1", "AREA_WEIGHTED, 3",
    "FITTED_PLANE, 0", "FITTED_PLANE, 1", "FITTED_PLANE, 3"
  })
  void losingABeamMovesNeitherLevelNorVolume(GroupMethod method, int lost) {
    for (Surface surface : List.of(tilted(12), heap(13))) {
      BeamGroup group = silo(method, FOUR);
      List<Reading> all = levels(surface, FOUR);
      BeamGroupSnapshot before = group.update(all);
      BeamGroupSnapshot after = group.update(with(all, lost, LOST));
      assertEquals(before.equivalentLevel().value(), after.equivalentLevel().value(), 1e-9);
      assertEquals(before.volume().value(), after.volume().value(), 1e-7);
      assertEquals(before.highest().value(), after.highest().value(), 1e-9);
      assertEquals(before.lowest().value(), after.lowest().value(), 1e-9);
      assertEquals(Quality.uncertain(Cause.BEAM_LOST), after.volume().quality());
      assertTrue(after.uncertaintyMetres() > before.uncertaintyMetres());
      assertTrue(after.uncertaintyCubicMetres() > before.uncertaintyCubicMetres());
      assertEquals(List.of("LT-" + (lost + 1)), after.loss().names());
      assertTrue(after.loss().differenceKnown());
    }
  }

  /** The heap goes on rising while its beam is lost: the carried difference keeps the peak. */
  @Test
  void aHeapThatRisesAfterTheLossIsFollowed() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    group.update(levels(heap(13), FOUR));
    BeamGroupSnapshot truth = silo(GroupMethod.AREA_WEIGHTED, FOUR).update(levels(heap(16), FOUR));
    BeamGroupSnapshot lost = group.update(with(levels(heap(16), FOUR), 0, LOST));
    assertEquals(truth.volume().value(), lost.volume().value(), 1e-7);
    assertEquals(16, lost.highest().value(), 1e-9);
    // By hand: leaving the peak out lowers the mean by its share of its height over the others.
    double share = truth.shares().get(0);
    double height = 2.4 * Math.tan(Math.toRadians(32));
    assertEquals(-share * height, lost.loss().shiftMetres(), 1e-9);
    assertEquals(-share * height * 9 * Math.PI, lost.loss().shiftCubicMetres(), 1e-7);
    // Twice the carried difference, as if the heap had become a funnel.
    assertEquals(0.02 + share * 2 * height, lost.uncertaintyMetres(), 1e-9);
  }

  /** On a plane three beams tell the fourth exactly, also when the tilt changes after the loss. */
  @Test
  void aPlaneThatTiltsAfterTheLossIsFollowed() {
    BeamGroup group = silo(GroupMethod.FITTED_PLANE, FOUR);
    group.update(levels(tilted(12), FOUR));
    Surface changed = new PlaneSurface(9, -0.1, 0.4);
    BeamGroupSnapshot lost = group.update(with(levels(changed, FOUR), 2, LOST));
    assertEquals(9, lost.equivalentLevel().value(), 1e-9);
    // Nothing is carried on but the limit of agreement stays in doubt for the lost share.
    assertEquals(0.02 + 0.1 * lost.shares().get(2), lost.uncertaintyMetres(), 1e-9);
  }

  /** Nothing is known of a beam that was never seen: the doubt is what the steepest pile allows. */
  @Test
  void aBeamThatWasNeverSeenWidensTheUncertaintyByThePhysicalBound() {
    PlanPoint[] two = {PlanPoint.CENTRE, PlanPoint.polar(2, 0)};
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, two);
    BeamGroupSnapshot snapshot = group.update(with(levels(new FlatSurface(12), two), 1, LOST));
    assertFalse(snapshot.loss().differenceKnown());
    assertEquals(12, snapshot.equivalentLevel().value(), 1e-12);
    double allowed = 2 * Math.tan(Math.toRadians(35)) + 0.1;
    assertEquals(0.02 + snapshot.shares().get(1) * allowed, snapshot.uncertaintyMetres(), 1e-9);
    assertEquals(Cause.BEAM_LOST, snapshot.volume().quality().cause());
  }

  /** A beam that lied before it was lost must not go on lying through its difference. */
  @Test
  void aDifferenceSeenInDisagreementIsNotCarriedOn() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    List<Reading> agreed = levels(new FlatSurface(10), FOUR);
    group.update(agreed);
    List<Reading> lying = new ArrayList<>(agreed);
    lying.set(1, Reading.good(18, START));
    group.update(lying);
    BeamGroupSnapshot lost = group.update(with(agreed, 1, LOST));
    assertEquals(10, lost.equivalentLevel().value(), 1e-9);
    assertEquals(10, lost.highest().value(), 1e-9);
  }

  @Test
  void aBeamThatComesBackCountsAtOnce() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    group.update(levels(heap(13), FOUR));
    group.update(with(levels(heap(13), FOUR), 0, LOST));
    Surface funnel = ConeSurface.funnel(PlanPoint.CENTRE, 11, 30);
    BeamGroupSnapshot back = group.update(levels(funnel, FOUR));
    assertEquals(Quality.GOOD, back.volume().quality());
    assertEquals(BeamLoss.NONE, back.loss());
    assertEquals(11, back.lowest().value());
    assertEquals(0.02, back.uncertaintyMetres(), 1e-12);
  }

  @Test
  void tooFewBeamsMakeTheResultBadWithTheLastValues() {
    BeamAgreement two = new BeamAgreement(0.1, 35, 2, 0.02);
    PlanPoint[] places = {PlanPoint.CENTRE, PlanPoint.polar(2, 0), PlanPoint.polar(2, 180)};
    BeamGroup group =
        BeamGroup.of(
            new BeamGroupSettings(
                Vessels.SILO, beams(21.5, places), GroupMethod.AREA_WEIGHTED, two));
    List<Reading> all = levels(new FlatSurface(12), places);
    double volume = group.update(all).volume().value();
    assertTrue(group.update(with(all, 0, LOST)).volume().usable().isPresent());
    BeamGroupSnapshot bad = group.update(with(with(all, 0, LOST), 2, LOST));
    assertEquals(LOST, bad.volume().quality());
    assertEquals(LOST, bad.highest().quality());
    assertEquals(volume, bad.volume().value());
    assertEquals(List.of("LT-1", "LT-3"), bad.loss().names());
  }

  @Test
  void aGroupThatHasSeenNothingIsBad() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    Reading waiting = new Reading(0, Quality.bad(Cause.WAITING_FOR_FIRST_SAMPLE), START);
    BeamGroupSnapshot snapshot = group.update(List.of(waiting, waiting, waiting, waiting));
    assertEquals(waiting, snapshot.volume());
  }

  /** A substitute is no measurement of this beam, so the other beams know better. */
  @Test
  void aSubstituteCountsAsLost() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    List<Reading> all = levels(heap(13), FOUR);
    BeamGroupSnapshot before = group.update(all);
    List<Reading> substituted = new ArrayList<>(all);
    substituted.set(1, new Reading(21, Quality.uncertain(Cause.SUBSTITUTED), START));
    BeamGroupSnapshot after = group.update(substituted);
    assertEquals(before.volume().value(), after.volume().value(), 1e-7);
    assertEquals(Cause.BEAM_LOST, after.volume().quality().cause());
    assertEquals(13, after.highest().value());
  }

  /** A held beam must not hold the limits of the live ones back; all held is held. */
  @Test
  void aHeldBeamMakesTheGroupUncertainButNotHeldUntilAllAreHeld() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    Quality held = Quality.uncertain(Cause.NO_RETURN_HELD);
    List<Reading> levels = levels(heap(13), FOUR);
    BeamGroupSnapshot one = group.update(with(levels, 1, held));
    assertEquals(Quality.uncertain(Cause.BEAM_LOST), one.highest().quality());
    assertEquals(List.of(), one.loss().names());
    for (int i = 0; i < 4; i++) {
      levels = with(levels, i, held);
    }
    assertEquals(held, group.update(levels).highest().quality());
  }

  @Test
  void theWorstUsableQualityWinsAndTheOldestTimeStands() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    List<Reading> levels = levels(heap(13), FOUR);
    levels.set(2, Reading.good(levels.get(2).value(), START.minusSeconds(4)));
    BeamGroupSnapshot snapshot = group.update(with(levels, 3, Quality.uncertain(Cause.SIMULATED)));
    assertEquals(Quality.uncertain(Cause.SIMULATED), snapshot.volume().quality());
    assertEquals(START.minusSeconds(4), snapshot.volume().time());
  }

  /** By hand: 2.4 m apart at 35 degrees may differ by 1.6805 m and the limit of 0.1 m. */
  @ParameterizedTest
  @ValueSource(doubles = {-1, 1})
  void beamsDisagreeBeyondWhatTheSteepestPileAllows(double sign) {
    double allowed = 2.4 * Math.tan(Math.toRadians(35)) + 0.1;
    List<Reading> level = levels(new FlatSurface(10), FOUR);
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    level.set(0, Reading.good(10 + sign * (allowed - 1e-9), START));
    assertEquals(Quality.GOOD, group.update(level).volume().quality());
    level.set(0, Reading.good(10 + sign * (allowed + 1e-9), START));
    BeamGroupSnapshot snapshot = group.update(level);
    assertEquals(Quality.uncertain(Cause.BEAMS_DISAGREE), snapshot.volume().quality());
    assertEquals(3, snapshot.disagreements().size());
    BeamDisagreement first = snapshot.disagreements().get(0);
    assertEquals("LT-1", first.first());
    assertEquals("LT-2", first.second());
    assertEquals(sign * allowed, first.differenceMetres(), 1e-6);
    assertEquals(Math.max(10, 10 + sign * allowed), snapshot.highest().value(), 1e-6);
  }

  @Test
  void aLevelOutsideTheVesselIsClampedAndUncertain() {
    PlanPoint[] two = {PlanPoint.CENTRE, PlanPoint.polar(2, 0)};
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, two);
    BeamGroupSnapshot snapshot =
        group.update(List.of(Reading.good(21.3, START), Reading.good(21, START)));
    assertEquals(Quality.uncertain(Cause.OUTSIDE_VESSEL), snapshot.volume().quality());
    assertEquals(21.2, snapshot.highest().value(), 1e-12);
  }

  /** The plane through three beams goes through the roof at the wall: the volume was cut. */
  @Test
  void aPlaneThroughTheRoofIsUncertain() {
    PlanPoint[] three = {PlanPoint.polar(1, 0), PlanPoint.polar(1, 120), PlanPoint.polar(1, 240)};
    BeamGroupSnapshot snapshot =
        silo(GroupMethod.FITTED_PLANE, three).update(levels(new PlaneSurface(20.4, 0.5, 0), three));
    assertEquals(Quality.uncertain(Cause.OUTSIDE_VESSEL), snapshot.volume().quality());
  }

  @Test
  void refusesTheWrongNumberOfLevels() {
    BeamGroup group = silo(GroupMethod.AREA_WEIGHTED, FOUR);
    assertRefused("BeamGroup.levels", () -> group.update(List.of(Reading.good(1, START))));
  }

  private static void assertGroupRefused(String field, GroupMethod method, PlanPoint... places) {
    List<GroupBeam> beams = beams(21.5, places);
    assertRefused(field, () -> new BeamGroupSettings(Vessels.SILO, beams, method, AGREEMENT));
  }

  @Test
  void refusesPlacesThatDetermineNothing() {
    PlanPoint a = PlanPoint.polar(2, 0);
    PlanPoint b = PlanPoint.polar(2, 180);
    assertGroupRefused("BeamGroupSettings.beams", GroupMethod.AREA_WEIGHTED, a);
    assertGroupRefused("BeamGroupSettings.beams", GroupMethod.AREA_WEIGHTED, a, a);
    assertGroupRefused("BeamGroupSettings.beams", GroupMethod.FITTED_PLANE, a, b);
    assertGroupRefused("BeamGroupSettings.beams", GroupMethod.FITTED_PLANE, a, b, PlanPoint.CENTRE);
    assertGroupRefused(
        "BeamGroupSettings.beams", GroupMethod.FITTED_PLANE, a, b, new PlanPoint(0, 0.5));
    assertGroupRefused("Beam.position", GroupMethod.AREA_WEIGHTED, a, PlanPoint.polar(3.1, 0));
  }

  /** Two beams that cross on their way down meet the surface at one place at some level. */
  @Test
  void refusesTiltedBeamsThatMeet() {
    Beam left =
        Beam.plumb(21.2, PlanPoint.polar(2, 180)).aimed(Math.toDegrees(Math.atan(2 / 10.6)), 0);
    Beam right =
        Beam.plumb(21.2, PlanPoint.polar(2, 0)).aimed(Math.toDegrees(Math.atan(2 / 10.6)), 180);
    List<GroupBeam> crossing = List.of(new GroupBeam("a", left), new GroupBeam("b", right));
    assertRefused(
        "BeamGroupSettings.beams",
        () -> new BeamGroupSettings(Vessels.SILO, crossing, GroupMethod.AREA_WEIGHTED, AGREEMENT));
  }

  @Test
  void refusesTheSameNameTwice() {
    Beam beam = Beam.plumb(21.5, PlanPoint.CENTRE);
    Beam other = Beam.plumb(21.5, PlanPoint.polar(2, 0));
    List<GroupBeam> same = List.of(new GroupBeam("a", beam), new GroupBeam("a", other));
    assertRefused(
        "GroupBeam.name",
        () -> new BeamGroupSettings(Vessels.SILO, same, GroupMethod.AREA_WEIGHTED, AGREEMENT));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -0.001})
  void refusesLimitsThatAreNone(double bad) {
    assertRefused("BeamAgreement.limit", () -> new BeamAgreement(bad, 35, 1, 0.02));
    assertRefused("BeamAgreement.limit", () -> new BeamAgreement(0, 35, 1, 0.02));
    assertRefused("BeamAgreement.steepest", () -> new BeamAgreement(0.1, bad, 1, 0.02));
    assertRefused("BeamAgreement.steepest", () -> new BeamAgreement(0.1, 80.1, 1, 0.02));
    assertRefused("BeamAgreement.levelUncertainty", () -> new BeamAgreement(0.1, 35, 1, bad));
    assertRefused("BeamAgreement.fewestBeams", () -> new BeamAgreement(0.1, 35, 0, 0.02));
    assertRefused("BeamAgreement.fewestBeams", () -> new BeamAgreement(0.1, 35, 65, 0.02));
  }
}
