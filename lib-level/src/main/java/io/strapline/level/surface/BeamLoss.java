package io.strapline.level.surface;

import java.util.List;

/**
 * What the loss of beams means for the result. Immutable.
 *
 * @param names of the beams without a usable level, in the order of the settings
 * @param differenceKnown whether every lost beam's difference to the others was seen before the
 *     loss and is carried on
 * @param shiftMetres by how much the equivalent level would have moved had the lost beams just been
 *     left out; zero when nothing is lost
 * @param shiftCubicMetres the same of the volume
 */
public record BeamLoss(
    List<String> names, boolean differenceKnown, double shiftMetres, double shiftCubicMetres) {

  /** Nothing is lost. */
  static final BeamLoss NONE = new BeamLoss(List.of(), true, 0, 0);

  /** Copies the names. */
  public BeamLoss {
    names = List.copyOf(names);
  }
}
