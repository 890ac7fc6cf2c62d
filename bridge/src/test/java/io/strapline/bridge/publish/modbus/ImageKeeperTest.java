package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.config.PlantSettings;
import io.strapline.bridge.model.SnapshotStore;
import io.strapline.level.point.MeasuringPoint;
import io.strapline.level.point.Sample;
import io.strapline.level.reading.Cause;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** Images over time, with a timer that the test turns. */
class ImageKeeperTest {

  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 7);
  private final MeasuringPoint silo =
      MeasuringPoint.of(TestPlants.silo("LT-101"), TestPlants.START);
  private final MeasuringPoint sump =
      MeasuringPoint.of(TestPlants.silo("LT-202"), TestPlants.START);
  private final SnapshotStore store = store();
  private final PlantSettings plant =
      TestPlants.plant(
          TestPlants.modbus(),
          TestPlants.config(TestPlants.silo("LT-101"), 1),
          TestPlants.config(TestPlants.silo("LT-202"), 0));
  private final ImageKeeper keeper =
      new ImageKeeper(RegisterMap.of(plant), store, TestPlants.clock(), BadValue.NAN, nanos::get);

  private SnapshotStore store() {
    silo.accept(Sample.level(TestPlants.START, 9.5));
    return TestPlants.store(silo, sump);
  }

  @Test
  void oneImageServesUntilTheNextIsPublished() {
    RegisterImage first = keeper.get();
    store.update(silo.accept(Sample.level(TestPlants.START.plusSeconds(1), 4)));
    assertSame(first, keeper.get());
    keeper.publish();
    assertEquals(4000, point().int32(52));
    assertEquals(9500, new ImageReader(first, WordOrder.ABCD, 1).int32(52));
  }

  @Test
  void generationCountsImagesAndHeartbeatCountsSeconds() {
    int generation = point().register(0);
    for (int i = 1; i <= 3; i++) {
      nanos.addAndGet(TimeUnit.MILLISECONDS.toNanos(500));
      keeper.publish();
      assertEquals(generation + i, point().register(0));
      assertEquals(i / 2, point().register(13));
      assertEquals(i / 2 == 1, plant().bit(2));
    }
  }

  @Test
  void aStalledPublisherShowsInEveryReadAndAgesRunOn() {
    nanos.addAndGet(ImageKeeper.STALLED_NANOS);
    assertEquals(192, point().register(4));
    nanos.addAndGet(1);
    int heartbeat = point().register(13);
    assertEquals(0, point().register(4));
    assertEquals(CauseCode.of(Cause.PROCESSING_ERROR), point().register(5));
    assertEquals(0x7FC0_0000, point().int32(34));
    assertEquals(Short.MIN_VALUE, point().int16(64));
    assertEquals(50, point().register(12));
    assertTrue(point().bit(12));
    assertTrue(plant().bit(3));
    assertEquals(4, plant().register(33));
    assertEquals(0, plant().register(28));
    int generation = point().register(0);
    nanos.addAndGet(TimeUnit.SECONDS.toNanos(3));
    assertEquals(80, point().register(12));
    assertNotEquals(generation, point().register(0));
    assertEquals(heartbeat, point().register(13));
  }

  @Test
  void aPublisherThatComesBackIsBelievedAgain() {
    nanos.addAndGet(ImageKeeper.STALLED_NANOS + 1);
    assertEquals(0, point().register(4));
    store.update(silo.tick(TestPlants.START.plusSeconds(5)));
    keeper.publish();
    assertEquals(192, point().register(4));
    assertFalse(plant().bit(3));
    nanos.addAndGet(ImageKeeper.STALLED_NANOS + 1);
    assertEquals(0, point().register(4));
  }

  @Test
  void thePlantCountsPointsAndAlarms() {
    // LT-202 has no sample yet: BAD, and not on Modbus itself. LT-101 is above its limit of 9 m.
    ImageReader p = plant();
    assertEquals(PlantBlock.MAGIC, p.register(0));
    assertEquals(2, p.register(27));
    assertEquals(1, p.register(28));
    assertEquals(0, p.register(29));
    assertEquals(1, p.register(30));
    assertTrue(p.bit(0));
    assertFalse(p.bit(1));
    assertTrue(p.bit(4));
    assertTrue(p.bit(5));
    assertTrue(p.bit(6));
    assertFalse(p.bit(7));
    assertEquals(TestPlants.START.getEpochSecond(), p.int32(34) & 0xFFFF_FFFFL);
  }

  private ImageReader point() {
    return new ImageReader(keeper.get(), WordOrder.ABCD, 1);
  }

  private ImageReader plant() {
    return new ImageReader(keeper.get(), WordOrder.ABCD, 0);
  }
}
