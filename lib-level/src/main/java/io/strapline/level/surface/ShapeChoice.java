package io.strapline.level.surface;

import io.strapline.level.internal.Check;

/**
 * How the shape of the surface is chosen. Immutable.
 *
 * @param rule who decides
 * @param atStart shape until the flow first moves: flat, heap or funnel; counts for {@link
 *     SurfaceRule#BY_FLOW} only
 * @param pattern what drawing makes of a heap; counts for {@link SurfaceRule#BY_FLOW} only
 * @param thresholds from which flow on the vessel counts as being filled or drawn; counts for
 *     {@link SurfaceRule#BY_FLOW} only
 */
public record ShapeChoice(
    SurfaceRule rule, SurfaceShape atStart, DrawPattern pattern, FlowThresholds thresholds) {

  /** Refuses a crater at the start, for which there is no heap yet. */
  public ShapeChoice {
    Check.present("ShapeChoice.rule", rule, "say who decides");
    Check.present("ShapeChoice.atStart", atStart, "give the shape at the start");
    Check.present("ShapeChoice.pattern", pattern, "say what drawing makes of a heap");
    Check.present("ShapeChoice.thresholds", thresholds, "give the flows");
    if (atStart == SurfaceShape.CRATER) {
      throw Check.error(
          "ShapeChoice.atStart",
          "CRATER",
          "",
          "needs a heap that was seen before",
          "start with FLAT, HEAP or FUNNEL");
    }
  }

  /** Returns the choice by flow, with a whole funnel when drawing. */
  public static ShapeChoice byFlow(SurfaceShape atStart, FlowThresholds thresholds) {
    return new ShapeChoice(SurfaceRule.BY_FLOW, atStart, DrawPattern.WHOLE_FUNNEL, thresholds);
  }

  /** Returns the choice of the user, which no flow changes. */
  public static ShapeChoice always(SurfaceRule rule) {
    if (rule == SurfaceRule.BY_FLOW) {
      throw Check.error(
          "ShapeChoice.rule", "BY_FLOW", "", "is no choice of the user", "use ShapeChoice.byFlow");
    }
    return new ShapeChoice(
        rule, SurfaceShape.FLAT, DrawPattern.WHOLE_FUNNEL, new FlowThresholds(1, 0));
  }

  /** Returns the shape after a movement, given the one before it. */
  SurfaceShape next(SurfaceShape before, MaterialFlow flow) {
    return switch (rule) {
      case ALWAYS_FLAT -> SurfaceShape.FLAT;
      case ALWAYS_HEAP -> SurfaceShape.HEAP;
      case ALWAYS_FUNNEL -> SurfaceShape.FUNNEL;
      case BY_FLOW ->
          switch (flow) {
            case STILL -> before;
            case FILLING -> SurfaceShape.HEAP;
            case DRAWING -> drawn(before);
          };
    };
  }

  private SurfaceShape drawn(SurfaceShape before) {
    boolean heapStands = before == SurfaceShape.HEAP || before == SurfaceShape.CRATER;
    return pattern == DrawPattern.CRATER && heapStands ? SurfaceShape.CRATER : SurfaceShape.FUNNEL;
  }
}
