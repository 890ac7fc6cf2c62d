package io.strapline.level.plan;

/**
 * One derived set point. Immutable.
 *
 * @param setPoint which one
 * @param levelMetres above the datum; the reading at which the alarm or action comes
 * @param volumeCubicMetres content at this level
 * @param requiredSeconds time that the step to the next set point towards the critical level must
 *     hold at the greatest flow; zero for a critical level
 * @param stepSeconds time that it does hold: the allowance and the least height add to it
 * @param criticalSeconds time to the critical level at the greatest flow
 */
public record SetPointRow(
    SetPoint setPoint,
    double levelMetres,
    double volumeCubicMetres,
    double requiredSeconds,
    double stepSeconds,
    double criticalSeconds) {}
