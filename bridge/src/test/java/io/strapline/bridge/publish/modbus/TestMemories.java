package io.strapline.bridge.publish.modbus;

/** Memories with certain contents. */
final class TestMemories {

  private TestMemories() {}

  /** Holds what the examples of sections 6.16 and 6.17 begin with. */
  static TestMemory ofTheSpecification() {
    TestMemory memory = new TestMemory(1000, -1);
    memory.set(3, 0x00FE);
    memory.set(4, 0x0012);
    return memory;
  }

  /** As {@link #ofTheSpecification}, with the registers that section 6.17 reads. */
  static TestMemory ofReadWrite() {
    TestMemory memory = ofTheSpecification();
    int[] read = {0x00FE, 0x0ACD, 0x0001, 0x0003, 0x000D, 0x00FF};
    for (int i = 0; i < read.length; i++) {
      memory.set(3 + i, read[i]);
    }
    return memory;
  }
}
