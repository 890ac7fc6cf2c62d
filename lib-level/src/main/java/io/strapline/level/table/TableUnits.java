package io.strapline.level.table;

import io.strapline.level.units.LengthUnit;
import io.strapline.level.units.Unit;
import io.strapline.level.units.VolumeUnit;
import java.util.Locale;

/** The units of a table's columns, and the words for its cells in messages. */
record TableUnits(Unit height, Unit volume) {

  static final TableUnits SI = new TableUnits(LengthUnit.METRE, VolumeUnit.CUBIC_METRE);

  String heightText(double value) {
    return String.format(Locale.ROOT, "height %s %s", value, height.asciiSymbol());
  }

  String volumeText(double value) {
    return String.format(Locale.ROOT, "volume %s %s", value, volume.asciiSymbol());
  }

  CapacityRow toSi(Entry entry) {
    return new CapacityRow(entry.line(), height.toSi(entry.height()), volume.toSi(entry.volume()));
  }
}
