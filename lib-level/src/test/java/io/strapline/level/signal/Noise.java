package io.strapline.level.signal;

import java.util.Random;

/** Measures how much of white noise a stage lets through. */
final class Noise {

  private static final int SAMPLES = 200_000;

  private Noise() {}

  /** Returns the ratio of the standard deviations behind and before the stage, 1 s a sample. */
  static double ratio(SignalFilter stage, Random random) {
    double before = 0;
    double behind = 0;
    for (int i = 0; i < SAMPLES; i++) {
      double noise = random.nextGaussian();
      double output = SignalFilterContract.feed(stage, i, noise);
      before += noise * noise;
      behind += output * output;
    }
    return Math.sqrt(behind / before);
  }
}
