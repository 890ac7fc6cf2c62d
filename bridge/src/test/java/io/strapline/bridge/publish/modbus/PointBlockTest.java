package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.PointSettings;
import io.strapline.level.point.PointSnapshot;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What stands in the registers of a point; the point itself is the library's. */
class PointBlockTest {

  private static final Instant START = TestPlants.START;
  private static final int NAN = 0x7FC0_0000;

  private final MeasuringPoint silo = MeasuringPoint.of(TestPlants.silo("LT-101"), START);

  @ParameterizedTest
  @EnumSource
  void aGoodLevelStandsInEveryTypeAndUnit(WordOrder order) {
    // Level 8.25 m of 10 m over 12 m2 at 1500 kg/m3, by hand: 99 m3, 21 m3 free, 148,500 kg.
    ImageReader r = block(silo.accept(Sample.level(START, 8.25)), order, BadValue.NAN, 0);
    assertEquals(192, r.register(4));
    assertEquals(0, r.register(5));
    assertEquals(0, r.register(6));
    assertEquals(2.75f, r.float32(30), 1e-6f);
    assertEquals(2.75f, r.float32(32), 1e-6f);
    assertEquals(8.25f, r.float32(34));
    assertEquals(82.5f, r.float32(36), 1e-5f);
    assertEquals(99f, r.float32(38), 1e-5f);
    assertEquals(21f, r.float32(40), 1e-5f);
    assertEquals(148_500f, r.float32(42), 0.1f);
    assertEquals(17.2f, r.float32(44), 1e-5f);
    assertEquals(8250, r.int32(52));
    assertEquals(2750, r.int32(54));
    assertEquals(2750, r.int32(56));
    assertEquals(9900, r.int32(58));
    assertEquals(2100, r.int32(60));
    assertEquals(148_500, r.int32(62));
    assertEquals(8250, r.int16(64));
    assertEquals(825, r.int16(65));
    assertEquals(8250, r.int16(66));
    assertEquals(17_200, r.int16(67));
    assertEquals(8.25, r.float64(78));
    assertEquals(99.0, r.float64(82), 1e-9);
    assertEquals(148_500.0, r.float64(86), 1e-6);
    assertEquals("LT-101", r.text(90));
    assertTrue(r.bit(10));
    assertFalse(r.bit(12));
  }

  @Test
  void aQuantityThatIsNotConfiguredIsNoNumberAndNotPresent() {
    MeasuringPoint carriage = MeasuringPoint.of(TestPlants.position("ZT-401"), START);
    ImageReader r = block(carriage.accept(Sample.distance(START, 5)), "ZT-401");
    assertEquals(192, r.register(4));
    assertEquals(-5f, r.float32(34));
    assertEquals(-5000, r.int16(64));
    assertEquals(NAN, r.int32(38));
    assertEquals(Integer.MIN_VALUE, r.int32(58));
    assertEquals(Short.MIN_VALUE, r.int16(67));
    int volume = 1 << 4;
    int level = 1 << 2;
    assertEquals(level, r.register(19) & (level | volume));
    assertEquals(level, r.register(20) & (level | volume));
    assertEquals(0, r.register(22));
  }

  @Test
  void aBadValueIsNoNumberByDefault() {
    silo.accept(Sample.level(START, 8.25));
    ImageReader r = block(silo.fail(Cause.PROCESSING_ERROR, START), "LT-101");
    assertEquals(0, r.register(4));
    assertEquals(CauseCode.of(Cause.PROCESSING_ERROR), r.register(5));
    assertEquals(1, r.register(6));
    assertEquals(NAN, r.int32(34));
    assertEquals(Short.MIN_VALUE, r.int16(64));
    assertEquals(Integer.MIN_VALUE, r.int32(52));
    assertTrue(Double.isNaN(r.float64(78)));
    assertEquals(0, r.register(17));
    assertTrue(r.bit(12));
    assertTrue(r.bit(13));
  }

  @Test
  void aHeldBadValueIsTheLastGoodOneAndIsFlagged() {
    silo.accept(Sample.level(START, 8.25));
    PointSnapshot bad = silo.fail(Cause.PROCESSING_ERROR, START);
    ImageReader r = block(bad, WordOrder.ABCD, BadValue.HOLD, 0);
    assertEquals(0, r.register(4));
    assertEquals(8.25f, r.float32(34));
    assertEquals(8250, r.int32(52));
    assertEquals(2, r.register(17) & 2);
    assertTrue(r.bit(17));
  }

  @Test
  void nothingIsHeldBeforeThereWasAGoodValue() {
    ImageReader r = block(silo.snapshot(), WordOrder.ABCD, BadValue.HOLD, 0);
    assertEquals(0, r.register(4));
    assertEquals(CauseCode.of(Cause.WAITING_FOR_FIRST_SAMPLE), r.register(5));
    assertEquals(NAN, r.int32(34));
    assertEquals(Short.MIN_VALUE, r.int16(64));
    assertEquals(0, r.register(17) & 2);
  }

  @Test
  void anIntegerThatCannotHoldTheValueStandsAtItsLimitAndIsFlagged() {
    MeasuringPoint far = MeasuringPoint.of(TestPlants.position("ZT-401"), START);
    ImageReader r = block(far.accept(Sample.distance(START, 40)), "ZT-401");
    assertEquals(-40f, r.float32(34));
    assertEquals(-32_767, r.int16(64));
    assertEquals(-4000, r.int16(65));
    assertEquals(-40_000, r.int32(52));
    assertEquals(1, r.register(17) & 1);
    // Bit 6: the seventh of the scaled integers, which are 52 54 56 58 60 62 64 65 66 67.
    assertEquals(1 << 6, r.register(18));
    assertTrue(r.bit(18));
  }

  @Test
  void smallNegativeLevelsStayNegative() {
    MeasuringPoint point = MeasuringPoint.of(TestPlants.position("ZT-401"), START);
    ImageReader r = block(point.accept(Sample.distance(START, 0.001)), "ZT-401");
    assertEquals(-1, r.int16(64));
    assertEquals(0xFFFF, r.register(64));
    assertEquals(-1, r.int32(52));
  }

  @Test
  void alarmsStandInBitsOfRegistersAndAsDiscreteInputs() {
    ImageReader r = block(silo.accept(Sample.level(START, 9.5)), "LT-101");
    int high = 1 << 1;
    int badSignal = 1 << 4;
    assertEquals(high, r.register(8));
    assertEquals(high, r.register(9));
    assertEquals(high | badSignal, r.register(10));
    assertEquals(0, r.register(11));
    assertEquals(high, r.register(29));
    assertTrue(r.bit(1));
    assertTrue(r.bit(6));
    assertFalse(r.bit(0));
    assertFalse(r.bit(2));
  }

  @Test
  void limitAlarmsAreHeldBackWhileTheSignalIsBad() {
    silo.accept(Sample.level(START, 5));
    ImageReader r = block(silo.fail(Cause.PROCESSING_ERROR, START), "LT-101");
    assertEquals(1 << 4, r.register(8));
    assertEquals(1 << 1, r.register(11) & 1 << 1);
    assertTrue(r.bit(4));
  }

  @Test
  void sourceTimeAndAgeStandBesideTheValue() {
    silo.accept(Sample.level(START, 5));
    ImageReader r = block(silo.tick(START.plusMillis(2500)), "LT-101");
    assertEquals(START.getEpochSecond(), r.int32(14) & 0xFFFF_FFFFL);
    assertEquals(250, r.register(16));
    assertEquals(25, r.register(12));
    assertEquals(25, r.register(27));
  }

  @Test
  void ageStopsAtTheEndOfItsRegister() {
    silo.accept(Sample.level(START, 5));
    assertEquals(65_535, block(silo.tick(START.plusSeconds(6554)), "LT-101").register(12));
    assertEquals(65_530, block(reset().tick(START.plusSeconds(6553)), "LT-101").register(12));
  }

  private static MeasuringPoint reset() {
    MeasuringPoint point = MeasuringPoint.of(TestPlants.silo("LT-101"), START);
    point.accept(Sample.level(START, 5));
    return point;
  }

  @Test
  void aPointThatIsNoLongerEvaluatedIsBadAndAges() {
    PointSnapshot good = silo.accept(Sample.level(START, 8.25));
    ImageReader fresh = block(good, WordOrder.ABCD, BadValue.NAN, 10);
    assertEquals(192, fresh.register(4));
    assertEquals(100, fresh.register(12));
    ImageReader dead = block(good, WordOrder.ABCD, BadValue.NAN, 10.1);
    assertEquals(0, dead.register(4));
    assertEquals(CauseCode.of(Cause.PROCESSING_ERROR), dead.register(5));
    assertEquals(1, dead.register(6));
    assertEquals(NAN, dead.int32(34));
    assertEquals(4, dead.register(17));
    assertEquals(101, dead.register(12));
    assertTrue(dead.bit(19));
    assertFalse(dead.bit(10));
  }

  @Test
  void aPointWithoutSnapshotIsBad() {
    PlantSettings plant = plant(TestPlants.silo("LT-101"), WordOrder.ABCD, BadValue.HOLD);
    RegisterImage image = image(plant, silo.snapshot(), "LT-OTHER");
    ImageReader r = new ImageReader(image, WordOrder.ABCD, 3);
    assertEquals(0, r.register(4));
    assertEquals(65_535, r.register(12));
    assertEquals(NAN, r.int32(34));
    assertEquals("LT-101", r.text(90));
  }

  private static ImageReader block(PointSnapshot snapshot, String tag) {
    assertEquals(tag, snapshot.tag());
    return block(snapshot, WordOrder.ABCD, BadValue.NAN, 0);
  }

  private static ImageReader block(
      PointSnapshot snapshot, WordOrder order, BadValue bad, double unseenSeconds) {
    PointSettings settings = TestPlants.silo(snapshot.tag());
    PlantSettings plant = plant(settings, order, bad);
    RegisterImage image =
        RegisterMap.of(plant)
            .image(
                TestPlants.store(snapshot).view(),
                new Moment(START, 7, 9, false, bad),
                tag -> unseenSeconds);
    ImageReader reader = new ImageReader(image, order, 3);
    for (int edge : new int[] {0, 24, 25, 49, 50, 74, 75, 99}) {
      assertEquals(7, reader.register(edge));
    }
    assertEquals(9, reader.register(13));
    return reader;
  }

  private static RegisterImage image(PlantSettings plant, PointSnapshot snapshot, String tag) {
    assertFalse(snapshot.tag().equals(tag));
    PointSnapshot other = MeasuringPoint.of(TestPlants.silo(tag), START).snapshot();
    return RegisterMap.of(plant)
        .image(
            TestPlants.store(other).view(),
            new Moment(START, 7, 9, false, plant.modbus().badValue()),
            t -> 0);
  }

  private static PlantSettings plant(PointSettings point, WordOrder order, BadValue bad) {
    return TestPlants.plant(TestPlants.modbus(order, bad), TestPlants.config(point, 3));
  }
}
