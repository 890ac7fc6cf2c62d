package io.strapline.level.surface;

import io.strapline.level.internal.Check;
import io.strapline.level.reading.Cause;
import io.strapline.level.reading.Quality;
import io.strapline.level.reading.Reading;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * Corrects the level of one beam for the shape of the solids' surface. Holds what the solids do,
 * the shape in use and the last heap; {@link #SurfaceModel} starts it anew. One per beam, not for
 * more than one thread at a time.
 *
 * <p>The assumed surface goes through the level where the beam meets it. A change of shape changes
 * the volume by the difference of the two corrections at that sample; the snapshot says since when
 * the shape is in use.
 */
public final class SurfaceModel {

  /**
   * How far the level must fall below the last heap before the crater counts as having reached the
   * beam, in metres; common practice, no source.
   */
  public static final double CRATER_SEEN_METRES = 0.02;

  /** How near the floor the level counts as bare floor, in metres; common practice, no source. */
  public static final double BARE_FLOOR_METRES = 0.01;

  private final SurfaceSettings settings;
  private final BeamView view;
  private MaterialFlow flow = MaterialFlow.STILL;
  private SurfaceShape shape;
  private @Nullable Instant shapeSince;
  private @Nullable ConeSurface heap;
  private @Nullable SurfaceContent last;

  /** Starts a model that has seen no movement. */
  public SurfaceModel(SurfaceSettings settings) {
    this.settings = Check.present("SurfaceModel.settings", settings, "give the settings");
    view = BeamView.of(settings.vessel(), settings.beam());
    shape = settings.choice().next(settings.choice().atStart(), MaterialFlow.STILL);
  }

  /** Returns the settings. */
  public SurfaceSettings settings() {
    return settings;
  }

  /**
   * Takes one sample.
   *
   * <p>A BAD level leaves the last values, at BAD. A BAD flow keeps the shape and makes the result
   * uncertain, since the shape may no longer be right; it counts for {@link SurfaceRule#BY_FLOW}
   * only. A held flow keeps the shape too and, as an exception to the rule that the worst input
   * wins, does not mark the level, which would then count as held itself and be judged by no limit.
   * A level outside the vessel at the beam's place is clamped there and uncertain.
   *
   * @param level where the beam meets the surface, metres above the datum
   * @param inflow in cubic metres per second, positive into the vessel; of no effect when the shape
   *     is fixed by the user
   */
  public SurfaceSnapshot update(Reading level, Reading inflow) {
    Check.present("SurfaceModel.level", level, "give the reading");
    Check.present("SurfaceModel.inflow", inflow, "give the reading");
    move(inflow, level.time());
    if (level.quality().isBad()) {
      return badSnapshot(level);
    }
    Quality quality = Quality.worst(level.quality(), flowQuality(inflow));
    return snapshot(new Reading(level.value(), quality, level.time()));
  }

  private Quality flowQuality(Reading inflow) {
    Cause cause = inflow.quality().cause();
    boolean counts = settings.choice().rule() == SurfaceRule.BY_FLOW && !cause.isHeld();
    return counts && cause != Cause.NONE ? Quality.uncertain(cause) : Quality.GOOD;
  }

  private void move(Reading inflow, Instant now) {
    if (!inflow.quality().isBad() && !inflow.quality().cause().isHeld()) {
      flow = settings.choice().thresholds().next(flow, inflow.value());
    }
    SurfaceShape next = settings.choice().next(shape, flow);
    if (shapeSince == null || next != shape) {
      shapeSince = now;
    }
    shape = next;
  }

  private SurfaceSnapshot snapshot(Reading level) {
    PlanPoint foot = view.footAt(level.value());
    double floor = settings.vessel().floorMetres(foot);
    double roof = settings.vessel().roofMetres(foot);
    double inside = Math.min(Math.max(level.value(), floor), roof);
    double slack = Plan.SNAP * settings.vessel().curve().maxHeightMetres();
    boolean outside = Math.abs(inside - level.value()) > slack;
    Surface surface = surface(foot, inside);
    SurfaceContent content = content(surface);
    boolean bareFloor = inside <= floor + BARE_FLOOR_METRES && isOnlyABound(surface, foot, content);
    double doubt = bareFloor ? content.volumeCubicMetres() : hiddenCrater(foot, content);
    boolean clamped = outside || bareFloor || content.cutByRoof();
    Quality vessel = clamped ? Quality.uncertain(Cause.OUTSIDE_VESSEL) : Quality.GOOD;
    return snapshot(level.derived(inside, vessel), content, doubt);
  }

  /** Under bare floor off the cone's axis the cone may stand lower than the one drawn. */
  private static boolean isOnlyABound(Surface surface, PlanPoint foot, SurfaceContent content) {
    return content.volumeCubicMetres() > 0
        && surface instanceof ConeSurface cone
        && cone.axis().distanceMetres(foot) > 0;
  }

  private Surface surface(PlanPoint foot, double level) {
    Piling piling = settings.piling();
    return switch (shape) {
      case FLAT -> new FlatSurface(level);
      case FUNNEL -> piling.funnel().through(foot, level);
      case HEAP -> {
        ConeSurface now = piling.heap().through(foot, level);
        heap = now;
        yield now;
      }
      case CRATER -> crater(foot, level);
    };
  }

  private Surface crater(PlanPoint foot, double level) {
    ConeSurface stands = heap == null ? settings.piling().heap().through(foot, level) : heap;
    double fallen = stands.heightMetres(foot) - level;
    if (fallen < 0) {
      stands = stands.through(foot, level);
    }
    heap = stands;
    return fallen > CRATER_SEEN_METRES
        ? new CraterSurface(stands, settings.piling().funnel().through(foot, level))
        : stands;
  }

  /** Returns what a crater that just reaches the beam would take from the heap. */
  private double hiddenCrater(PlanPoint foot, SurfaceContent content) {
    if (shape != SurfaceShape.CRATER || !(content.surface() instanceof ConeSurface stands)) {
      return 0;
    }
    ConeSurface funnel = settings.piling().funnel().through(foot, stands.heightMetres(foot));
    SurfaceContent least = SurfaceContent.of(settings.vessel(), new CraterSurface(stands, funnel));
    return Math.max(content.volumeCubicMetres() - least.volumeCubicMetres(), 0.0);
  }

  private SurfaceContent content(Surface surface) {
    SurfaceContent known = last;
    if (known != null && known.surface().equals(surface)) {
      return known;
    }
    SurfaceContent fresh = SurfaceContent.of(settings.vessel(), surface);
    last = fresh;
    return fresh;
  }

  private SurfaceSnapshot snapshot(Reading level, SurfaceContent content, double doubt) {
    double flat = settings.vessel().curve().volumeCubicMetres(level.value());
    return new SurfaceSnapshot(
        level.derived(content.equivalentLevelMetres(), Quality.GOOD),
        level.derived(content.volumeCubicMetres(), Quality.GOOD),
        level.derived(content.highestMetres(), Quality.GOOD),
        level.derived(content.lowestMetres(), Quality.GOOD),
        new SurfaceBias(
            level.value() - content.equivalentLevelMetres(), flat - content.volumeCubicMetres()),
        doubt,
        state(level.time()));
  }

  private SurfaceSnapshot badSnapshot(Reading level) {
    SurfaceContent known = last;
    return new SurfaceSnapshot(
        level.derived(known == null ? 0 : known.equivalentLevelMetres(), Quality.GOOD),
        level.derived(known == null ? 0 : known.volumeCubicMetres(), Quality.GOOD),
        level.derived(known == null ? 0 : known.highestMetres(), Quality.GOOD),
        level.derived(known == null ? 0 : known.lowestMetres(), Quality.GOOD),
        new SurfaceBias(0, 0),
        settings.vessel().curve().capacityCubicMetres(),
        state(level.time()));
  }

  private SurfaceSnapshot.State state(Instant now) {
    Instant since = shapeSince == null ? now : shapeSince;
    return new SurfaceSnapshot.State(shape, flow, since);
  }
}
