package io.strapline.bridge.publish.opcua;

import io.strapline.level.units.Unit;
import org.eclipse.milo.opcua.stack.core.types.builtin.LocalizedText;
import org.eclipse.milo.opcua.stack.core.types.structured.EUInformation;

/** Units as OPC UA tells them. Stateless. */
final class EngineeringUnits {

  /** Namespace of the UNECE common codes: OPC 10000-8, 5.6.4.4. */
  private static final String UNECE = "http://www.opcfoundation.org/UA/units/un/cefact";

  private EngineeringUnits() {}

  static EUInformation of(Unit unit) {
    return new EUInformation(
        UNECE,
        unit.uneceCode().map(EngineeringUnits::unitId).orElse(-1),
        LocalizedText.english(unit.symbol()),
        LocalizedText.english(unit.label()));
  }

  /** Returns the characters of the common code as the bytes of a number: OPC 10000-8, 5.6.4.4. */
  static int unitId(String commonCode) {
    int unitId = 0;
    for (int i = 0; i < commonCode.length(); i++) {
      unitId = unitId << 8 | commonCode.charAt(i);
    }
    return unitId;
  }
}
