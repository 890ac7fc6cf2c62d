package io.strapline.level.inventory;

import static io.strapline.level.testing.Refusals.assertRefused;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.inventory.BulkMaterial.Source;
import io.strapline.level.inventory.BulkMaterial.Span;
import io.strapline.level.testing.CsvRow;
import io.strapline.level.testing.CsvRows;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class BulkMaterialTest {

  private static List<CsvRow> rows(boolean published) {
    return CsvRows.read(BulkMaterialTest.class, "bulk_solids.csv").stream()
        .filter(row -> row.text("source_kind").equals("published") == published)
        .toList();
  }

  static List<CsvRow> published() {
    return rows(true);
  }

  private static Source source(CsvRow row) {
    String text = row.text("source");
    if (text.startsWith("EN 1991-1-1")) {
      return Source.STORED_BUILDING_MATERIALS;
    }
    if (text.startsWith("EN 1991-4")) {
      return Source.SILO_WHEAT;
    }
    if (text.contains("Belt Conveyors")) {
      return Source.BELT_CONVEYORS;
    }
    return text.contains("Storage capacity") ? Source.STORED_GRAIN : Source.FILLING_ANGLES;
  }

  private static BulkMaterial listed(CsvRow row) {
    List<BulkMaterial> found =
        BulkMaterial.named(row.text("material")).stream()
            .filter(material -> material.form().equals(row.text("form")))
            .filter(material -> material.source() == source(row))
            .toList();
    assertEquals(1, found.size(), row.toString());
    return found.get(0);
  }

  // The table of check values gives densities rounded to the kilogram.
  @ParameterizedTest
  @MethodSource("published")
  void holdsEveryPublishedDensity(CsvRow row) {
    Optional<Span> density = listed(row).density();
    assertEquals(row.text("density_min_kg_m3").isEmpty(), density.isEmpty());
    density.ifPresent(
        span -> {
          assertEquals(row.number("density_min_kg_m3"), span.low(), 0.501);
          assertEquals(row.number("density_max_kg_m3"), span.high(), 0.501);
        });
  }

  @ParameterizedTest
  @MethodSource("published")
  void holdsEveryPublishedAngleOfRepose(CsvRow row) {
    Optional<Span> repose = listed(row).repose();
    String text = row.text("angle_of_repose_deg");
    assertEquals(text.isEmpty(), repose.isEmpty());
    repose.ifPresent(
        span -> {
          String[] ends = text.split(" to ", -1);
          assertEquals(Double.parseDouble(ends[0]), span.low());
          assertEquals(Double.parseDouble(ends[ends.length - 1]), span.high());
        });
  }

  @Test
  void holdsNothingThatWasNotPublished() {
    assertEquals(published().size(), BulkMaterial.all().size());
    assertFalse(rows(false).isEmpty());
    for (CsvRow row : rows(false)) {
      assertTrue(
          BulkMaterial.named(row.text("material")).stream()
              .noneMatch(material -> material.form().equals(row.text("form"))),
          row.toString());
    }
  }

  // 16 kN/m3 over 9.80665 m/s2.
  @Test
  void turnsUnitWeightIntoDensityByStandardGravity() {
    BulkMaterial cement = BulkMaterial.named("Cement").get(0);
    assertEquals(16_000 / 9.80665, cement.density().orElseThrow().middle(), 1e-9);
    assertEquals(28, cement.repose().orElseThrow().middle());
    assertTrue(cement.source().text().startsWith("EN 1991-1-1"));
  }

  @Test
  void givesEverySourceOfAName() {
    assertEquals(
        List.of(Source.SILO_WHEAT, Source.STORED_GRAIN, Source.FILLING_ANGLES),
        BulkMaterial.named(" WHEAT ").stream().map(BulkMaterial::source).toList());
    assertEquals(List.of(), BulkMaterial.named("unobtainium"));
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, -1, 0})
  void refusesSpansThatAreNone(double wrong) {
    assertRefused("Span.low", () -> new Span(wrong, 1));
    assertRefused("Span.high", () -> new Span(1, wrong));
  }
}
