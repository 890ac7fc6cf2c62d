package io.strapline.bridge.config;

import java.util.List;

/** The heads that a configuration can name, each with the keys that it needs. */
enum HeadKind {
  /** A flat end. */
  FLAT,
  /** A cone about the axis. */
  CONE("depth"),
  /** A cone whose apex is level with the top of a lying shell. */
  ECCENTRIC_CONE("depth"),
  /** Half a sphere. */
  HEMISPHERICAL,
  /** Half a spheroid, a quarter of the diameter deep. */
  ELLIPSOIDAL_2_TO_1,
  /** Half a spheroid of any depth. */
  ELLIPSOIDAL("depth"),
  /** A part of one sphere, without a knuckle. */
  DISH("depth"),
  /** Crown and knuckle by their radii. */
  TORISPHERICAL("crown-radius", "knuckle-radius"),
  /** Torispherical, crown 1.0 D, knuckle 0.06 D of the inside diameter. */
  ASME_F_AND_D,
  /** Torispherical, crown 1.0 D, knuckle 0.1 D of the outside diameter. */
  DIN_28011,
  /** Torispherical, crown 0.8 D, knuckle 0.154 D of the outside diameter. */
  DIN_28013;

  // List.of makes the list immutable, which its type does not tell.
  @SuppressWarnings("ImmutableEnumChecker")
  private final List<String> sizes;

  HeadKind(String... sizes) {
    this.sizes = List.of(sizes);
  }

  /** Returns the keys of the sizes that the form needs. */
  List<String> sizes() {
    return sizes;
  }
}
