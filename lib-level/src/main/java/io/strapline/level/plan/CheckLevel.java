package io.strapline.level.plan;

import io.strapline.level.internal.Check;

/**
 * A level at which a loop is checked, such as a set point. Immutable.
 *
 * @param name what people call it, not blank
 * @param levelMetres above the datum, finite
 */
public record CheckLevel(String name, double levelMetres) {

  /** Checks both. */
  public CheckLevel {
    name = Check.text("CheckLevel.name", name, "name the level").strip();
    levelMetres = Check.finite("CheckLevel.level", levelMetres, "m", "enter the set point");
  }

  /** Returns the level of a derived set point. */
  public static CheckLevel of(SetPointRow row) {
    return new CheckLevel(row.setPoint().label(), row.levelMetres());
  }
}
