package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.PlantSettings;
import io.strapline.level.reading.Cause;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RegisterMapTest {

  private static List<RegisterRow> plantRows() {
    return PlantBlock.REGISTERS.stream().map(Register::row).toList();
  }

  private static List<RegisterRow> pointRows() {
    return PointBlock.REGISTERS.stream().map(Register::row).toList();
  }

  @Test
  void noValueCrossesAMultipleOf25SoThatReadsIn125sNeverCutOne() {
    for (RegisterRow row : Stream.of(plantRows(), pointRows()).flatMap(List::stream).toList()) {
      assertEquals(row.offset() / 25, row.last() / 25, row.toString());
    }
  }

  @Test
  void registersLieInOrderWithoutOverlapInsideTheBlock() {
    for (List<RegisterRow> rows : List.of(plantRows(), pointRows())) {
      int free = 0;
      for (RegisterRow row : rows) {
        assertTrue(row.offset() >= free, row.toString());
        free = row.last() + 1;
      }
      assertTrue(free <= RegisterMap.BLOCK);
    }
  }

  @Test
  void everyGroupOfAPointBeginsAndEndsWithTheGeneration() {
    for (int edge : new int[] {0, 24, 25, 49, 50, 74, 75, 99}) {
      assertTrue(
          pointRows().stream().anyMatch(r -> r.offset() == edge && r.name().equals("generation")));
    }
  }

  @Test
  void discreteInputsHaveOneMeaningEach() {
    Set<Integer> plant = new HashSet<>();
    Bit.PLANT.forEach(bit -> assertTrue(plant.add(bit.row().offset())));
    Set<Integer> point = new HashSet<>();
    Bit.POINT.forEach(bit -> assertTrue(point.add(bit.row().offset())));
  }

  @Test
  void aClientCanReadTheWholeMapFrom0InChunksOf125() {
    List<io.strapline.bridge.config.PointConfig> points = new ArrayList<>();
    for (int block = 1; block <= 654; block++) {
      points.add(TestPlants.config(TestPlants.silo("LT-" + block), block));
    }
    PlantSettings plant =
        TestPlants.plant(
            TestPlants.modbus(), points.toArray(io.strapline.bridge.config.PointConfig[]::new));
    AddressSpace space = spaceOf(plant);
    assertEquals(65_500, space.end());
    for (int start = 0; start < 65_500; start += 125) {
      assertTrue(space.registersReadable(start, Math.min(125, 65_500 - start)), "from " + start);
    }
    assertFalse(space.registersReadable(65_500, 1));
  }

  private static AddressSpace spaceOf(PlantSettings plant) {
    return RegisterMap.of(plant).space();
  }

  @Test
  void blocksThatAreNotConfiguredAreNoAddresses() {
    AddressSpace space =
        spaceOf(
            TestPlants.plant(
                TestPlants.modbus(),
                TestPlants.config(TestPlants.silo("LT-1"), 1),
                TestPlants.config(TestPlants.silo("LT-3"), 3),
                TestPlants.config(TestPlants.silo("LT-9"), 0)));
    assertTrue(space.registersReadable(100, 100));
    assertFalse(space.registersReadable(200, 1));
    assertFalse(space.bitsReadable(299, 1));
    assertTrue(space.bitsReadable(300, 100));
    assertEquals(400, space.end());
  }

  @ParameterizedTest
  @ValueSource(ints = {-1, 655, 65535})
  void aBlockNumberOutOfRangeIsNamed(int block) {
    PlantSettings plant =
        TestPlants.plant(TestPlants.modbus(), TestPlants.config(TestPlants.silo("LT-101"), block));
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> RegisterMap.of(plant));
    assertTrue(refused.toString().contains("LT-101 modbus-block = " + block));
  }

  @Test
  void aBlockNumberTakenTwiceIsNamed() {
    PlantSettings plant =
        TestPlants.plant(
            TestPlants.modbus(),
            TestPlants.config(TestPlants.silo("LT-101"), 7),
            TestPlants.config(TestPlants.silo("LT-102"), 7));
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> RegisterMap.of(plant));
    assertTrue(refused.toString().contains("LT-102 modbus-block = 7"));
  }

  @Test
  void everyCauseHasItsOwnNumber() {
    Set<Integer> numbers = new HashSet<>();
    for (Cause cause : Cause.values()) {
      assertTrue(numbers.add(CauseCode.of(cause)), cause.name());
    }
    assertEquals(0, CauseCode.of(Cause.NONE));
  }
}
