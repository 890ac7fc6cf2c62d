package io.strapline.level.plan;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import io.strapline.level.surface.Beam;
import io.strapline.level.surface.BeamSpread;
import io.strapline.level.surface.BeamView;
import io.strapline.level.surface.CylinderObstacle;
import io.strapline.level.surface.HeightSpan;
import io.strapline.level.surface.Obstacle;
import io.strapline.level.surface.PlanPoint;
import io.strapline.level.surface.SolidsVessel;
import io.strapline.level.vessel.ConeSection;
import io.strapline.level.vessel.StackedVessel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Runs the example of {@code docs/beam.md}; the expected numbers are worked by hand. */
class BeamPageTest {

  private static final Path SOURCE =
      Path.of("src/test/java", BeamPageTest.class.getName().replace('.', '/') + ".java");

  // atan(2 / 21.5) = 5.3145 deg; from (0.3, 12) across the beam 0.8128 m less half of 0.0704 m.
  @Test
  void theExampleOfThePageGivesItsNumbers() {
    SolidsVessel silo =
        SolidsVessel.of(StackedVessel.uprightCylinderOnCone(new ConeSection(0.4, 6, 3.2), 18));
    Beam beam = new Beam(21.5, PlanPoint.polar(2, 40), 0, 0, new BeamSpread(0.02, 0.3));
    Obstacle stream =
        CylinderObstacle.fillingStream(PlanPoint.CENTRE, 0.3, new HeightSpan(12, 21.2));
    BeamPlan plan = BeamPlan.of(new BeamPlanBasis(silo, beam, 30, 0.25, List.of(stream)));
    BeamAim aim = plan.proposal().orElseThrow();
    assertEquals(5.31, aim.tiltDegrees(), 5e-3);
    assertEquals(220, aim.azimuthDegrees(), 5e-2);
    assertTrue(aim.reachesOutlet());
    assertEquals(0.78, aim.tightest().orElseThrow().clearMetres(), 5e-3);
    assertEquals(2.057, plan.plumb().end().levelMetres(), 5e-4);
  }

  @Test
  void theCodeOnThePageIsTheCodeAbove() throws IOException {
    String page = Files.readString(Path.of("..", "docs", "beam.md"));
    String code = page.substring(page.indexOf("```java\n") + 8);
    String here = Files.readString(SOURCE).replaceAll("\\s+", " ");
    String there = code.substring(0, code.indexOf("```")).strip().replaceAll("\\s+", " ");
    assertTrue(here.contains(there), there);
  }

  @Test
  void thePageCarriesTheCautionOfTheCode() throws IOException {
    String page = Files.readString(Path.of("..", "docs", "beam.md"));
    String plain = page.replace("> ", "").replaceAll("\\s+", " ");
    assertTrue(plain.contains(BeamView.CAUTION), plain);
  }
}
