package io.strapline.level.surface;

import java.util.List;

/**
 * The part of a plan that lies nearer to one place than to any of the others, or the whole plan
 * when there are no others. It is convex, so that every ray from the place leaves it once.
 *
 * @param plan of the vessel
 * @param pivot the place, in the plan
 * @param others places other than the pivot
 */
record Cell(Plan plan, PlanPoint pivot, List<PlanPoint> others) {

  /** Bearings at which the neighbour beyond the edge is looked up, to find the corners. */
  private static final int LOOKS = 360;

  private static final int BISECTIONS = 50;
  private static final int PIECES = 8;
  private static final int MOST_RAYS = 6000;
  private static final double ALLOWED_SHARE = 1e-12;

  static Cell whole(Plan plan, PlanPoint pivot) {
    return new Cell(plan, pivot, List.of());
  }

  /** Returns the distance from the pivot to the edge of the cell. */
  double toEdge(double bearing) {
    double edge = plan.toEdgeMetres(pivot, bearing);
    for (PlanPoint other : others) {
      edge = Math.min(edge, toBisector(other, bearing));
    }
    return edge;
  }

  /** Half the distance to the other, over the cosine of the angle to it; none when it is behind. */
  private double toBisector(PlanPoint other, double bearing) {
    double dx = other.xMetres() - pivot.xMetres();
    double dy = other.yMetres() - pivot.yMetres();
    double towards = dx * Math.cos(bearing) + dy * Math.sin(bearing);
    return towards > 0 ? (dx * dx + dy * dy) / (2 * towards) : Double.POSITIVE_INFINITY;
  }

  /** Returns the index of the place beyond the edge, -1 for the wall. */
  private int beyond(double bearing) {
    double edge = plan.toEdgeMetres(pivot, bearing);
    int nearest = -1;
    for (int i = 0; i < others.size(); i++) {
      double bisector = toBisector(others.get(i), bearing);
      if (bisector < edge) {
        edge = bisector;
        nearest = i;
      }
    }
    return nearest;
  }

  /** Returns a full turn with the corners of the cell among its breaks. */
  Breaks turn() {
    Breaks turn = new Breaks(-Math.PI, Math.PI);
    for (int i = 1; i < PIECES; i++) {
      turn.add(Math.PI * (2.0 * i / PIECES - 1));
    }
    if (plan instanceof RectangularPlan rectangle) {
      addCorners(turn, rectangle.lengthMetres() / 2, rectangle.widthMetres() / 2);
    }
    for (int i = 0; i < LOOKS && !others.isEmpty(); i++) {
      addCellCorner(turn, bearingOf(i), bearingOf(i + 1));
    }
    return turn;
  }

  private static double bearingOf(int look) {
    return Math.PI * (2.0 * look / LOOKS - 1);
  }

  /** Adds the bearings of the corners of a rectangle about the vessel's axis. */
  void addCorners(Breaks turn, double halfX, double halfY) {
    for (double x : new double[] {-halfX, halfX}) {
      for (double y : new double[] {-halfY, halfY}) {
        turn.add(Math.atan2(y - pivot.yMetres(), x - pivot.xMetres()));
      }
    }
  }

  private void addCellCorner(Breaks turn, double from, double to) {
    int before = beyond(from);
    if (before == beyond(to)) {
      return;
    }
    double low = from;
    double high = to;
    for (int i = 0; i < BISECTIONS; i++) {
      double middle = (low + high) / 2;
      if (beyond(middle) == before) {
        low = middle;
      } else {
        high = middle;
      }
    }
    turn.add((low + high) / 2);
  }

  /** Returns the area: half the integral of the squared distance to the edge over all bearings. */
  double area() {
    double allowed = ALLOWED_SHARE * plan.areaSquareMetres();
    Quadrature over =
        new Quadrature(
            bearing -> {
              double edge = toEdge(bearing);
              return edge * edge / 2;
            },
            allowed,
            MOST_RAYS);
    return over.over(turn().rising());
  }
}
