package io.strapline.level.surface;

/**
 * Two beams whose levels no surface of the stated steepness can join. Immutable.
 *
 * @param first name of one beam
 * @param second name of the other
 * @param differenceMetres level of the first less the second
 * @param allowedMetres greatest difference allowed between them
 */
public record BeamDisagreement(
    String first, String second, double differenceMetres, double allowedMetres) {}
