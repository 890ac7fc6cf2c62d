package io.strapline.level.uncertainty;

import io.strapline.level.internal.Check;
import io.strapline.level.uncertainty.UncertaintyBudget.Measurand;
import java.util.ArrayList;
import java.util.List;

/**
 * The uncertainty budgets of level, volume and mass of one content, by the law of propagation of
 * uncertainty (GUM equations 10 and 16). Immutable.
 *
 * <p>Sensitivities (derived here from the model of {@link MeasuredContent}): level to distance
 * -cos(tilt), to tilt distance x sin(tilt), to reference height and surface 1; volume to level the
 * free surface dV/dh, to a table's error 1 or, in proportion, the volume; mass to volume the
 * density, to density the volume, to temperature volume x density change per kelvin. dV/dh is the
 * vessel's exact surface where the curve is a vessel, else the central difference over plus and
 * minus one standard uncertainty of the level (GUM 5.1.3, note 2).
 *
 * <p>A beam that hangs plumb has no slope against its tilt, so the term of second order is a line
 * of its own: half the second derivative times the spread of the squared tilt, root(kurtosis - 1) x
 * u^2 (GUM 5.1.2 note, there for a normal distribution).
 *
 * <p>Near empty and full, where a vessel's walls bend, or where the level may lie beyond the curve,
 * a straight line does not stand for the curve: {@link UncertaintyBudget#linearisationDoubtful}
 * then tells, with the reason. The rule (this project's choice, no source): over plus and minus the
 * expanded uncertainty of the level the curve leaves the line by more than a tenth of the expanded
 * uncertainty of the volume.
 */
public final class ContentUncertainty {

  private final MeasuredContent content;
  private final List<UncertaintySource> sources;
  private final List<Correlation> correlations;
  private final double coverageFactor;

  private ContentUncertainty(
      MeasuredContent content,
      List<UncertaintySource> sources,
      List<Correlation> correlations,
      double coverageFactor) {
    this.content = content;
    this.sources = sources;
    this.correlations = correlations;
    this.coverageFactor = coverageFactor;
  }

  /**
   * Returns the budgets of a content whose sources are independent.
   *
   * @param sources each name once
   * @param coverageFactor k of the expanded uncertainties, in [1, 10]
   */
  public static ContentUncertainty of(
      MeasuredContent content, List<UncertaintySource> sources, double coverageFactor) {
    return of(content, sources, List.of(), coverageFactor);
  }

  /**
   * Returns the budgets of a content.
   *
   * @param sources each name once
   * @param correlations between sources, by name
   * @param coverageFactor k of the expanded uncertainties, in [1, 10]
   * @throws IllegalArgumentException if a name is there twice or is not known, or if the
   *     correlations cannot all be true together
   */
  public static ContentUncertainty of(
      MeasuredContent content,
      List<UncertaintySource> sources,
      List<Correlation> correlations,
      double coverageFactor) {
    Check.present("ContentUncertainty.content", content, "give what was measured");
    ContentUncertainty uncertainty =
        new ContentUncertainty(
            content, List.copyOf(sources), List.copyOf(correlations), coverageFactor);
    uncertainty.requireNames();
    return uncertainty;
  }

  /** Checks all names and correlations at once, as if every source acted on one result. */
  private void requireNames() {
    List<Contribution> all = sources.stream().map(source -> Contribution.of(source, 1)).toList();
    CorrelationMatrix.of(all, correlations);
    Check.between(
        "ContentUncertainty.coverageFactor", coverageFactor, "", 1, 10, "give k, usually 2");
  }

  /** Returns the budget of the level, in metres. */
  public UncertaintyBudget level() {
    double level = content.beam().levelMetres();
    return budget(new Measurand("level", level, "m"), levelLines(), List.of());
  }

  /** Returns the budget of the volume, in cubic metres. */
  public UncertaintyBudget volume() {
    return volume(volumeLines());
  }

  private UncertaintyBudget volume(List<Contribution> lines) {
    Measurand volume = new Measurand("volume", content.volumeCubicMetres(), "m3");
    double expanded = budget(volume, lines, List.of()).expanded();
    UncertaintyBudget level = level();
    return budget(volume, lines, slope(level).doubts(level.expanded(), expanded));
  }

  /** Returns the budget of the mass, in kilograms; doubts are those of the volume. */
  public UncertaintyBudget mass() {
    List<Contribution> volumeLines = volumeLines();
    List<Contribution> lines = new ArrayList<>();
    volumeLines.forEach(line -> lines.add(line.times(content.densityKgPerCubicMetre())));
    for (UncertaintySource source : sources) {
      if (source.influence() == Influence.DENSITY) {
        lines.add(Contribution.of(source, content.volumeCubicMetres()));
      } else if (source.influence() == Influence.TEMPERATURE) {
        double perKelvin = content.volumeCubicMetres() * content.densityPerKelvin();
        lines.add(Contribution.of(source, perKelvin));
      }
    }
    Measurand mass = new Measurand("mass", content.massKg(), "kg");
    return budget(mass, lines, volume(volumeLines).doubts());
  }

  private UncertaintyBudget budget(
      Measurand result, List<Contribution> lines, List<String> doubts) {
    return new UncertaintyBudget(result, lines, correlationsOf(lines), coverageFactor, doubts);
  }

  /** A correlation counts in a budget that has both its sources. */
  private List<Correlation> correlationsOf(List<Contribution> lines) {
    List<String> names = lines.stream().map(Contribution::name).toList();
    return correlations.stream()
        .filter(pair -> names.contains(pair.first()) && names.contains(pair.second()))
        .toList();
  }

  private List<Contribution> levelLines() {
    List<Contribution> lines = new ArrayList<>();
    for (UncertaintySource source : sources) {
      switch (source.influence()) {
        case DISTANCE -> lines.add(Contribution.of(source, -content.beam().cosine()));
        case TILT -> addTilt(source, lines);
        case REFERENCE_HEIGHT, SURFACE -> lines.add(Contribution.of(source, 1));
        case VOLUME, VOLUME_PART, DENSITY, TEMPERATURE -> {}
      }
    }
    return lines;
  }

  private void addTilt(UncertaintySource source, List<Contribution> lines) {
    lines.add(Contribution.of(source, content.beam().levelPerDegree()));
    double u = source.standard().value();
    double spread = Math.sqrt(source.distribution().kurtosis() - 1) * u * u;
    lines.add(
        new Contribution(
            source.name() + ", second order",
            source.type(),
            source.distribution(),
            new StandardUncertainty(spread, source.standard().degreesOfFreedom()),
            content.beam().halfBendPerSquareDegree()));
  }

  private List<Contribution> volumeLines() {
    double squareMetres = slope(level()).squareMetres();
    List<Contribution> lines = new ArrayList<>();
    levelLines().forEach(line -> lines.add(line.times(squareMetres)));
    for (UncertaintySource source : sources) {
      if (source.influence() == Influence.VOLUME) {
        lines.add(Contribution.of(source, 1));
      } else if (source.influence() == Influence.VOLUME_PART) {
        lines.add(Contribution.of(source, content.volumeCubicMetres()));
      }
    }
    return lines;
  }

  private LevelSlope slope(UncertaintyBudget level) {
    return new LevelSlope(content.curve(), level.result().value(), level.combined());
  }
}
