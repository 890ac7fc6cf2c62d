package io.strapline.bridge.config;

import io.strapline.bridge.config.ConfigProblem.Reason;
import io.strapline.level.units.Dimension;
import io.strapline.level.vessel.Head;
import io.strapline.level.vessel.Shell;
import java.util.Optional;

/**
 * A head as configured, with its straight flange. Immutable.
 *
 * @param head the head beyond the tangent line
 * @param flangeMetres length of its straight flange, which belongs to the shell
 */
record EndHead(Head head, double flangeMetres) {

  private static final EndHead FLAT = new EndHead(new Head.Flat(), 0);

  /**
   * Reads the head at a key of a vessel: flat when it is not given. Of a head with a problem the
   * flat one is returned, too; the vessel's section then is unsound.
   *
   * @param bore of the shell, unless it has problems of its own
   */
  static EndHead at(String key, Section vessel, Optional<Bore> bore) {
    return vessel.section(key, Keys.HEAD).flatMap(keys -> read(keys, bore)).orElse(FLAT);
  }

  private static Optional<EndHead> read(Section keys, Optional<Bore> bore) {
    double flange = keys.quantityOr("straight-flange", Dimension.LENGTH, 0);
    if (flange < 0) {
      keys.error("straight-flange", Reason.OUT_OF_RANGE, "must be zero or greater", "correct it");
    }
    return head(keys, bore).map(head -> new EndHead(head, flange));
  }

  /** Reads form and sizes of a head on a shell; empty after a problem. */
  static Optional<Head> head(Section keys, Optional<Bore> bore) {
    HeadKind form = keys.choice("form", Labels.all(HeadKind.class));
    boolean known = keys.isSound();
    double depth = size(keys, form, "depth", known);
    double crown = size(keys, form, "crown-radius", known);
    double knuckle = size(keys, form, "knuckle-radius", known);
    return bore.flatMap(
        shell ->
            keys.build(
                () -> {
                  Head head = of(form, depth, crown, knuckle, shell);
                  // Refuses a head that this shell cannot have.
                  head.depthMetres(shell.insideMetres());
                  return head;
                }));
  }

  /** Reads a size that the form needs, refuses one that it does not have. */
  private static double size(Section keys, HeadKind form, String key, boolean known) {
    if (!known || form.sizes().contains(key)) {
      return known || keys.has(key) ? keys.quantity(key, Dimension.LENGTH) : Double.NaN;
    }
    if (keys.has(key)) {
      keys.error(
          key,
          Reason.CONFLICT,
          "is no size of a head of form " + Labels.of(form),
          "remove it, or choose a form that has it");
    }
    return Double.NaN;
  }

  private static Head of(HeadKind form, double depth, double crown, double knuckle, Bore bore) {
    return switch (form) {
      case FLAT -> new Head.Flat();
      case CONE -> new Head.Conical(depth);
      case ECCENTRIC_CONE -> new Head.EccentricConical(depth);
      case HEMISPHERICAL -> new Head.Hemispherical();
      case ELLIPSOIDAL_2_TO_1 -> new Head.SemiEllipsoidal();
      case ELLIPSOIDAL -> new Head.Ellipsoidal(depth);
      case DISH -> new Head.SphericalDish(depth);
      case TORISPHERICAL -> bore.torispherical(crown, knuckle);
      case ASME_F_AND_D -> Head.Torispherical.ASME_F_AND_D;
      case DIN_28011 -> bore.ofOutside(Head.Torispherical.DIN_28011);
      case DIN_28013 -> bore.ofOutside(Head.Torispherical.DIN_28013);
    };
  }

  /** Returns a shell that was measured from weld to weld, with the flanges of both heads. */
  Shell lengthened(Shell shell, EndHead other) {
    return shell.withStraightFlanges(flangeMetres, other.flangeMetres);
  }

  /** Returns whether this head is flat. */
  boolean isFlat() {
    return head instanceof Head.Flat;
  }
}
