package io.strapline.bridge.source.modbus;

import io.strapline.bridge.config.SourceSettings.ModbusDevice;
import java.io.IOException;

/** The way to one or more devices. One request, one try. Used by one thread. */
interface Link {

  /**
   * Reads the registers of a group.
   *
   * @return the registers, high byte first, exactly as many as asked
   * @throws RefusedException when the device answers with an exception; the line is kept
   * @throws IOException when there is no line or no answer that fits
   */
  byte[] read(ModbusDevice device, ReadGroup group) throws IOException;

  /** Gives the line up; the next read makes a new one. */
  void disconnect();

  /** Ends a read that is going on in another thread, and makes all later ones fail. */
  void abort();
}
