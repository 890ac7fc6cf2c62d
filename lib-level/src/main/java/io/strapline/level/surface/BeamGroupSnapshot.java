package io.strapline.level.surface;

import io.strapline.level.reading.Reading;
import java.util.List;

/**
 * Level and volume from several beams at one moment. Immutable. All readings carry the oldest time
 * of the usable beams, so that their age is never understated.
 *
 * @param equivalentLevel level above the datum, in metres, of a flat surface with the same volume
 * @param volume in cubic metres
 * @param highest highest level among the beams, for high alarms, in metres; a lost beam counts with
 *     its estimate. The surface may be higher between the beams
 * @param lowest lowest level among the beams, for low alarms, likewise
 * @param uncertaintyMetres of the equivalent level: that of one beam, plus the misfit of a fitted
 *     plane, plus what lost beams add; the full height when BAD
 * @param uncertaintyCubicMetres the same of the volume
 * @param shares part of the plan that each beam stands for, in the order of the settings; their sum
 *     is 1
 * @param loss what is lost, and what that would shift
 * @param disagreements pairs of beams that cannot both be right, empty when all agree
 */
public record BeamGroupSnapshot(
    Reading equivalentLevel,
    Reading volume,
    Reading highest,
    Reading lowest,
    double uncertaintyMetres,
    double uncertaintyCubicMetres,
    List<Double> shares,
    BeamLoss loss,
    List<BeamDisagreement> disagreements) {

  /** Copies the lists. */
  public BeamGroupSnapshot {
    shares = List.copyOf(shares);
    disagreements = List.copyOf(disagreements);
  }
}
