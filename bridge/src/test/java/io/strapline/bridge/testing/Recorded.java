package io.strapline.bridge.testing;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * Series that real instruments recorded. They lie in {@code shared/recorded}, in the checkout's
 * folder or in one above it, and are no part of the repository.
 */
public final class Recorded {

  private Recorded() {}

  /** Returns a file, or skips the calling test when it is not there. */
  public static Path file(String name) {
    Path here = Path.of("").toAbsolutePath();
    Optional<Path> found =
        Stream.iterate(here, folder -> folder != null, Path::getParent)
            .map(folder -> folder.resolve("shared/recorded").resolve(name))
            .filter(Files::isRegularFile)
            .findFirst();
    Assumptions.assumeTrue(
        found.isPresent(),
        () -> "shared/recorded/" + name + " is not in " + here + " or above: skipped");
    return found.orElseThrow();
  }
}
