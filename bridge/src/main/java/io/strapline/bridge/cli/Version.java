package io.strapline.bridge.cli;

import picocli.CommandLine.IVersionProvider;

/** Tells the version that the jar's manifest names. Stateless. */
final class Version implements IVersionProvider {

  @Override
  public String[] getVersion() {
    String version = Version.class.getPackage().getImplementationVersion();
    return new String[] {"strapline " + (version == null ? "(not packed)" : version)};
  }
}
