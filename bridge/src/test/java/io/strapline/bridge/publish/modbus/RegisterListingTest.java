package io.strapline.bridge.publish.modbus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.bridge.config.ModbusSettings.BadValue;
import io.strapline.bridge.config.ModbusSettings.WordOrder;
import io.strapline.bridge.publish.modbus.RegisterListing.Line;
import io.strapline.bridge.publish.modbus.RegisterListing.Table;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class RegisterListingTest {

  private static final String MARK = "<!-- made from the definition: do not edit below -->\n";

  private static List<Line> lines() {
    return RegisterListing.of(
        TestPlants.plant(
            TestPlants.modbus(WordOrder.CDAB, BadValue.NAN),
            TestPlants.config(TestPlants.silo("LT-101"), 1),
            TestPlants.config(TestPlants.silo("LT-102"), 654),
            TestPlants.config(TestPlants.silo("LT-103"), 0)));
  }

  private static Line line(String owner, Table table, int address) {
    return lines().stream()
        .filter(l -> l.owner().equals(owner) && l.table() == table && l.address() == address)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void addressesAreGivenFromZeroInHexAndAsReferenceNumbersFromOne() {
    // The protocol's section 4.4: data item n has PDU address n - 1.
    Line level = line("LT-101", Table.REGISTER, 134);
    assertEquals("level", level.entry().name());
    assertEquals("float32", level.entry().type());
    assertEquals("0086", level.hex());
    assertEquals("300135", level.readOnlyReference());
    assertEquals("400135", level.otherReference());
    Line high = line("LT-101", Table.DISCRETE_INPUT, 101);
    assertEquals("high active", high.entry().name());
    assertEquals("100102", high.readOnlyReference());
    assertEquals("000102", high.otherReference());
    assertEquals("465500", line("LT-102", Table.REGISTER, 65_499).otherReference());
  }

  @Test
  void theOrderIsTheConfiguredOneExceptForTestConstants() {
    assertEquals("CDAB", line("LT-101", Table.REGISTER, 134).order());
    assertEquals("", line("LT-101", Table.REGISTER, 164).order());
    assertEquals("", line("LT-101", Table.REGISTER, 190).order());
    assertEquals("CDAB", line("plant", Table.REGISTER, 4).order());
    assertEquals("BADC", line("plant", Table.REGISTER, 12).order());
  }

  @Test
  void everyAddressOccursOnceAndPointsWithoutBlockDoNot() {
    Set<String> seen = new HashSet<>();
    for (Line line : lines()) {
      assertTrue(seen.add(line.table() + " " + line.address()), line.toString());
      assertTrue(!line.owner().equals("LT-103"), line.toString());
    }
  }

  @Test
  void theManualsPageIsTheDefinition() throws IOException {
    Path page = Path.of("..", "docs", "register-map.md");
    String text = Files.readString(page).replace("\r\n", "\n");
    String top = text.substring(0, text.indexOf(MARK) + MARK.length());
    String expected = top + "\n" + RegisterListing.reference();
    if (Boolean.getBoolean("strapline.write-docs")) {
      Files.writeString(page, expected);
    } else {
      assertEquals(expected, text);
    }
    assertTrue(expected.lines().count() <= 150, "a page has at most 150 lines");
  }
}
