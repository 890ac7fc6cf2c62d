package io.strapline.bridge.source.replay;

/** Delivers the entries of a series to the sink, with times of its own choice. */
interface Player {

  /** Delivers the next entry, when its turn has come. */
  void play(SeriesReader.Entry entry) throws InterruptedException;

  /** Is told that the series has ended. */
  void end();
}
