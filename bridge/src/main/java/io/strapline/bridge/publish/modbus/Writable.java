package io.strapline.bridge.publish.modbus;

/** What clients may write to. Safe for any thread. */
interface Writable {

  /** Returns what a register holds that is written through a mask. */
  int held(int address);

  /**
   * Executes the whole command or nothing of it.
   *
   * @throws Refusal when any part of it cannot be executed
   * @throws GoneException when the peer does not wait for it any more
   */
  void execute(Write write, Peer peer) throws Refusal, GoneException;
}
