package io.strapline.level.signal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Holds the page on conditioning against the code. */
class ConditioningPageTest {

  private static List<String> page() throws IOException {
    return Files.readAllLines(Path.of("..", "docs", "conditioning.md"));
  }

  private static String line(ProfileKey key) {
    String values =
        Stream.of(SignalProfile.values())
            .map(profile -> BigDecimal.valueOf(profile.sheet().value(key)))
            .map(value -> value.stripTrailingZeros().toPlainString())
            .collect(Collectors.joining(" | "));
    return "| " + key.label() + " | " + key.unit() + " | " + values + " |";
  }

  @Test
  void listsEveryValueOfEveryProfile() throws IOException {
    List<String> page = page();
    for (ProfileKey key : ProfileKey.values()) {
      assertTrue(page.contains(line(key)), "missing: " + line(key));
    }
    String labels =
        Stream.of(SignalProfile.values())
            .map(SignalProfile::label)
            .collect(Collectors.joining(" | "));
    assertTrue(page.contains("| value | unit | " + labels + " |"), labels);
    assertTrue(page.size() <= 150, "a page has at most 150 lines");
  }

  /** The worked example of the page: 1 + 1 + 40 + 3 + 23.0 s. */
  @Test
  void addsTheDelaysOfTheWorkedExample() {
    ObstructionSettings gate =
        new ObstructionSettings(
            new ObstructionSettings.Doubt(0.3, 3, 5),
            new ObstructionSettings.Doubt(0.5, 2, 3),
            0.1,
            20);
    SurfaceChecks surface = SurfaceChecks.NONE.with(gate).with(RateSettings.speed(0.05, 0.1, 0.02));
    GateSettings gates = new GateSettings(0.5, 30, OptionalDouble.empty(), List.of());
    SignalChain chain =
        SignalChain.of(new SignalSettings(gates, NoReturnPolicy.hold(10), 3, 4, 5, surface));
    List<StageDelay> delays = chain.delays(1, 8, 12);

    assertEquals(68.0, delays.stream().mapToDouble(StageDelay::stepSeconds).sum(), 0.05);
    assertEquals(7.5, chain.delaySeconds(1), 1e-9);
    assertEquals(1, chain.alarmDelaySeconds(1), 1e-9);
  }
}
