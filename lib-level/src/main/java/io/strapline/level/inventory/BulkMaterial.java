package io.strapline.level.inventory;

import io.strapline.level.internal.Check;
import java.util.List;
import java.util.Optional;

/**
 * Typical bulk density and angle of repose of a material, from a published table. Immutable.
 *
 * <p>A starting value for setting up, <b>to be confirmed by weighing</b>: bulk density moves with
 * moisture, grading and packing by far more than a level is in error, and the angle of repose for
 * design, the filling angle and the angle of internal friction are three different angles. Not for
 * structural design.
 *
 * @param name the material, as the source has it in English
 * @param form grading or state, empty if the source says none
 * @param density bulk density in kg/m3; empty where the source gives none
 * @param repose angle of repose in degrees from the horizontal; empty where the source gives none
 * @param source where the figures were published
 */
public record BulkMaterial(
    String name, String form, Optional<Span> density, Optional<Span> repose, Source source) {

  /**
   * A least and a greatest value.
   *
   * @param low least value, finite, greater than zero
   * @param high greatest value, not below {@code low}
   */
  public record Span(double low, double high) {

    /** Refuses values out of order. */
    public Span {
      Check.positive("Span.low", low, "", "give the least value");
      if (!(Double.isFinite(high) && high >= low)) {
        throw Check.error("Span.high", high, "", "must not be below " + low, "exchange the two");
      }
    }

    /** Returns the value in the middle. */
    public double middle() {
      return (low + high) / 2;
    }
  }

  /** Where the figures were published. */
  public enum Source {
    /** EN 1991-1-1, read as a table page of an open Eurocode collection, in translation. */
    STORED_BUILDING_MATERIALS("EN 1991-1-1 Annex A, Table A.7, stored building materials"),
    /** EN 1991-4, read as reproduced in an open-access paper. */
    SILO_WHEAT(
        "EN 1991-4 Annex E, wheat, as reproduced in Studia Geotechnica et Mechanica 2018, doi"
            + " 10.2478/sgem-2018-0043"),
    /** Reproduced on a public page only: check before contractual use. */
    BELT_CONVEYORS(
        "Belt Conveyors for Bulk Materials (CEMA), material table, as reproduced on a public page;"
            + " check before contractual use"),
    /** Averages of stored grain at safe moisture. */
    STORED_GRAIN("Storage capacity, extension note, tables 2 and 3"),
    /** Angles that form when filling; wetter grain is steeper. */
    FILLING_ANGLES("Filling angles of extension services, as listed in a public farmers' forum");

    private final String text;

    Source(String text) {
      this.text = text;
    }

    /** Returns the source as it is to be quoted. */
    public String text() {
      return text;
    }
  }

  /** Refuses a material without a name. */
  public BulkMaterial {
    Check.text("BulkMaterial.name", name, "name the material");
    Check.present("BulkMaterial.form", form, "give the form, empty if none");
    Check.present("BulkMaterial.density", density, "leave it empty if unknown");
    Check.present("BulkMaterial.repose", repose, "leave it empty if unknown");
    Check.present("BulkMaterial.source", source, "name the source");
  }

  /** Returns all materials of the built-in list, in the order of their sources. */
  public static List<BulkMaterial> all() {
    return BulkMaterialList.ALL;
  }

  /**
   * Returns the materials of a name: several where sources or forms differ.
   *
   * @param name upper and lower case and blanks around it do not matter
   * @return empty if there is none
   */
  public static List<BulkMaterial> named(String name) {
    String wanted = Check.text("BulkMaterial.name", name, "name the material").strip();
    return all().stream().filter(material -> material.name.equalsIgnoreCase(wanted)).toList();
  }
}
