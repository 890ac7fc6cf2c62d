package io.strapline.level.loop;

/**
 * By how much a calibration curve deviates from a straight line, in percent of span, three ways.
 * Immutable. Definitions from memory (IEC 61298-2 practice); the lines that minimise the largest
 * deviation are found exactly (derived here).
 *
 * @param terminalBased largest deviation from the line through both ends
 * @param zeroBased least largest deviation of a line that is fixed at the lower end
 * @param independent least largest deviation of any line
 */
public record Conformity(double terminalBased, double zeroBased, double independent) {

  /**
   * Returns the deviations of a curve.
   *
   * @param x rising, at least two
   * @param y as many
   */
  static Conformity of(double[] x, double[] y) {
    return new Conformity(terminal(x, y), zero(x, y), independent(x, y));
  }

  private static double terminal(double[] x, double[] y) {
    int last = x.length - 1;
    double most = 0;
    for (int i = 1; i < last; i++) {
      most = Math.max(most, Math.abs(offChord(x, y, 0, i, last)));
    }
    return most;
  }

  /**
   * With u and v counted from the fixed end, the deviation e admits the slopes {@code [(v - e) / u,
   * (v + e) / u]} at each point. Intervals have a common slope if each two of them have, so the
   * answer is the largest that a pair asks for: {@code |v_j u_i - v_i u_j| / (u_i + u_j)}.
   */
  private static double zero(double[] x, double[] y) {
    double most = 0;
    for (int i = 1; i < x.length; i++) {
      for (int j = i + 1; j < x.length; j++) {
        double ui = x[i] - x[0];
        double uj = x[j] - x[0];
        double cross = (y[j] - y[0]) * ui - (y[i] - y[0]) * uj;
        most = Math.max(most, Math.abs(cross) / (ui + uj));
      }
    }
    return most;
  }

  /**
   * Each point admits a strip of lines (offset and slope). Strips have a common line if each three
   * of them have (Helly's theorem in the plane), and three points ask for half of the middle one's
   * distance from the chord of the outer two.
   */
  private static double independent(double[] x, double[] y) {
    double most = 0;
    for (int i = 0; i < x.length; i++) {
      for (int k = i + 2; k < x.length; k++) {
        for (int j = i + 1; j < k; j++) {
          most = Math.max(most, Math.abs(offChord(x, y, i, j, k)) / 2);
        }
      }
    }
    return most;
  }

  private static double offChord(double[] x, double[] y, int left, int middle, int right) {
    double part = (x[middle] - x[left]) / (x[right] - x[left]);
    return y[middle] - (y[left] * (1 - part) + y[right] * part);
  }
}
