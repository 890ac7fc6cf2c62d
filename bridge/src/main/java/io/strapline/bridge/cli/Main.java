package io.strapline.bridge.cli;

/** Start of the program. */
public final class Main {

  private Main() {}

  /** Runs the command line and exits with its code. */
  public static void main(String[] args) {
    throw new UnsupportedOperationException("later in this commit series");
  }
}
