package io.strapline.level.uncertainty;

/** How a standard uncertainty was found (GUM 2.3.2, 2.3.3). Neither is better than the other. */
public enum EvaluationType {
  /** From the spread of repeated observations. */
  A,
  /** By other means: data sheet, certificate, experience. */
  B
}
