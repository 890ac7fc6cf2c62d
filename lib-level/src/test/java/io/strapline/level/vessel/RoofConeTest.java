package io.strapline.level.vessel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** A cone that ends in its point, the worst case near full. */
class RoofConeTest extends VesselContract {

  @Override
  protected Vessel curve() {
    return StackedVessel.of(List.of(new ConeSection(2.4, 0, 2.1)));
  }

  /** A thin film on the floor is a cylinder: V = pi r^2 h (1 - h/H + ...), derived here. */
  @Test
  void keepsItsDigitsNearEmpty() {
    double h = 2.1e-9;
    double film = Math.PI * 1.2 * 1.2 * h * (1 - 1e-9);
    assertEquals(film, curve().volumeCubicMetres(h), 1e-14 * film);
  }
}
