package io.strapline.level.uncertainty;

import java.util.Random;

/** Random numbers of the distributions (JCGM 101:2008, 6.4), with mean 0 and deviation 1. */
final class Draws {

  private Draws() {}

  static double standard(Distribution distribution, Random random) {
    return switch (distribution) {
      case NORMAL -> random.nextGaussian();
      case RECTANGULAR -> Math.sqrt(3) * (2 * random.nextDouble() - 1);
      case TRIANGULAR -> Math.sqrt(6) * (random.nextDouble() + random.nextDouble() - 1);
      case U_SHAPED -> Math.sqrt(2) * Math.sin(2 * Math.PI * random.nextDouble());
    };
  }
}
