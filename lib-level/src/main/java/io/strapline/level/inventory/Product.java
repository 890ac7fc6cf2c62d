package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import io.strapline.level.vessel.CapacityCurve;

/**
 * What a vessel holds: its name, bulk density and moisture as it lies. Immutable.
 *
 * @param name what people call it, not blank; without the blanks around it
 * @param density bulk density as it lies, water included
 * @param moisture moisture as it lies
 */
public record Product(String name, BulkDensity density, Moisture moisture) {

  /** Refuses a product without a name. */
  public Product {
    name = Check.text("Product.name", name, "give the product a name").strip();
    Check.present("Product.density", density, "give the bulk density");
    Check.present("Product.moisture", moisture, "give the moisture, Moisture.DRY if none");
  }

  /** Returns the mass curve of this product in a vessel, water included. */
  public MassCurve massIn(CapacityCurve vessel) {
    return MassCurve.of(vessel, density);
  }
}
