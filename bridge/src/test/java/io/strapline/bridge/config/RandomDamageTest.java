package io.strapline.bridge.config;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** However a file is damaged, it is read or refused with places: never another exception. */
class RandomDamageTest {

  private static final long SEED = 20261125;
  private static final int KINDS_A_VALUE = 4;
  private static final int ROUNDS = 300;
  private static final Pattern VALUE = Pattern.compile("(?<=: )[^\\s,{}\\[\\]#][^,{}\\[\\]\\n]*");

  private static final List<String> GARBAGE =
      List.of(
          "NaN m",
          "1e999 m",
          "-1 m",
          "0 m",
          "1e-300 m",
          "1e9 m",
          "0",
          "-0",
          "0x10",
          "1_000",
          "''",
          "~",
          "null",
          "[]",
          "{}",
          "[1, 2]",
          "{ a: b }",
          "true",
          "-",
          "\"\\0\"",
          "1,5 m",
          "12 mA",
          "5 deg",
          "99999999999999999999",
          "\u221e m",
          "\u0663 m",
          "ABCD",
          "../../x",
          "a\tb");

  @TempDir private Path folder;

  private static List<int[]> places(String text) {
    List<int[]> places = new ArrayList<>();
    Matcher matcher = VALUE.matcher(text);
    while (matcher.find()) {
      places.add(new int[] {matcher.start(), matcher.end()});
    }
    return places;
  }

  @Test
  void everyValueInTurnBecomesGarbage() throws IOException {
    String text = Samples.text(Samples.EVERY_KEY);
    Path file = Samples.write(folder, text);
    List<int[]> places = places(text);
    assertTrue(places.size() > 100, () -> places.size() + " values found");
    Random random = new Random(SEED);
    for (int[] place : places) {
      for (int i = 0; i < KINDS_A_VALUE; i++) {
        String garbage = GARBAGE.get(random.nextInt(GARBAGE.size()));
        String broken = text.substring(0, place[0]) + garbage + text.substring(place[1]);
        String what = text.substring(place[0], place[1]) + " -> " + garbage + ", seed " + SEED;
        assertDoesNotThrow(() -> read(file, broken), what);
      }
    }
  }

  @Test
  void lettersAreLostDoubledAndSwappedAnywhere() throws IOException {
    String text = Samples.text(Samples.EVERY_KEY);
    Path file = Samples.write(folder, text);
    Random random = new Random(SEED);
    for (int i = 0; i < ROUNDS; i++) {
      String broken = damage(text, random);
      int round = i;
      assertDoesNotThrow(() -> read(file, broken), () -> "seed " + SEED + ", round " + round);
    }
  }

  private static String damage(String text, Random random) {
    int at = random.nextInt(text.length() - 20);
    int to = at + random.nextInt(20);
    return switch (random.nextInt(4)) {
      case 0 -> text.substring(0, at) + text.substring(to);
      case 1 -> text.substring(0, to) + text.substring(at);
      case 2 -> text.substring(0, at) + (char) (1 + random.nextInt(0x2FF)) + text.substring(at + 1);
      default -> text.substring(0, at);
    };
  }

  /** Refusals must be complete; what is not refused must be usable. */
  private static void read(Path file, String text) throws IOException {
    Files.writeString(file, text);
    try {
      assertFalse(PlantReader.read(file).plant().points().isEmpty());
    } catch (ConfigException refused) {
      for (ConfigProblem problem : refused.problems()) {
        assertFalse(problem.rule().isBlank() || problem.fix().isBlank(), problem.toString());
      }
    }
  }
}
