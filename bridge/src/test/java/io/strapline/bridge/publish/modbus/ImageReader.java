package io.strapline.bridge.publish.modbus;

import io.strapline.bridge.config.ModbusSettings.WordOrder;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/** Reads values back out of an image by the names of the register map. */
final class ImageReader {

  private final RegisterImage image;
  private final WordOrder order;
  private final int start;

  ImageReader(RegisterImage image, WordOrder order, int block) {
    this.image = image;
    this.order = order;
    start = 100 * block;
  }

  int register(int offset) {
    return image.register(start + offset);
  }

  short int16(int offset) {
    return (short) register(offset);
  }

  boolean bit(int offset) {
    return image.bit(start + offset);
  }

  int int32(int offset) {
    return bytes(offset, 2).getInt();
  }

  float float32(int offset) {
    return bytes(offset, 2).getFloat();
  }

  double float64(int offset) {
    return bytes(offset, 4).getDouble();
  }

  String text(int offset) {
    ByteBuffer bytes = ByteBuffer.allocate(16);
    image.putRegisters(start + offset, 8, bytes);
    return new String(bytes.array(), StandardCharsets.US_ASCII).replace("\0", "");
  }

  private ByteBuffer bytes(int offset, int words) {
    ByteBuffer bytes = ByteBuffer.allocate(2 * words);
    image.putRegisters(start + offset, words, bytes);
    return ByteBuffer.wrap(order.arrange(bytes.array()));
  }
}
