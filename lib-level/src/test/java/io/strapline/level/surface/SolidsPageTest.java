package io.strapline.level.surface;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.reading.Reading;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.StackedVessel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Runs the example of {@code docs/solids.md}; the expected numbers are worked by hand. */
class SolidsPageTest {

  private static final Path SOURCE =
      Path.of("src/test/java", SolidsPageTest.class.getName().replace('.', '/') + ".java");

  // tan 32 x (2 - 0.8) = 0.749 843; x 9 pi = 21.2014; 12 + 0.8 tan 32 = 12.499 895
  @Test
  void theExampleOfThePageGivesItsNumbers() {
    Instant now = Instant.parse("2025-03-01T06:00:00Z");
    SolidsVessel silo =
        SolidsVessel.of(StackedVessel.uprightCylinderOnCone(new ConeSection(0.4, 6, 3.2), 18));
    Beam beam = Beam.plumb(21.5, PlanPoint.polar(0.8, 30));
    Piling piling = new Piling(PlanPoint.CENTRE, PlanPoint.CENTRE, 32, 40);
    ShapeChoice choice = ShapeChoice.byFlow(SurfaceShape.HEAP, new FlowThresholds(0.005, 0.002));
    SurfaceModel model = new SurfaceModel(new SurfaceSettings(silo, beam, piling, choice));
    SurfaceSnapshot snapshot = model.update(Reading.good(12, now), Reading.good(0.02, now));
    assertEquals(0.750, snapshot.bias().levelMetres(), 5e-4);
    assertEquals(21.20, snapshot.bias().volumeCubicMetres(), 5e-3);
    assertEquals(11.250, snapshot.equivalentLevel().value(), 5e-4);
    assertEquals(12.500, snapshot.highest().value(), 5e-4);
  }

  @Test
  void theCodeOnThePageIsTheCodeAbove() throws IOException {
    String page = Files.readString(Path.of("..", "docs", "solids.md"));
    String code = page.substring(page.indexOf("```java\n") + 8);
    String here = Files.readString(SOURCE).replaceAll("\\s+", " ");
    String there = code.substring(0, code.indexOf("```")).strip().replaceAll("\\s+", " ");
    assertTrue(here.contains(there), there);
  }
}
