package io.strapline.bridge.publish.opcua.security;

import java.io.IOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Set;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Files and folders that only their owner may open. Where the system knows no such permissions
 * (Windows), they are made with those of the folder above. Stateless.
 */
final class OwnerOnly {

  private static final Logger LOG = LoggerFactory.getLogger(OwnerOnly.class);

  private OwnerOnly() {}

  /** Makes an empty file, replacing one that is there. */
  static Path createFile(Path file) throws IOException {
    Files.deleteIfExists(file);
    return Files.createFile(file, only("rw-------"));
  }

  /** Makes a folder and those above it; one that is there stays as it is. */
  static Path createFolder(Path folder) throws IOException {
    return Files.createDirectories(folder, only("rwx------"));
  }

  static void warnIfOpen(Path file) throws IOException {
    if (!isPosix()) {
      return;
    }
    Set<PosixFilePermission> others = EnumSet.copyOf(Files.getPosixFilePermissions(file));
    others.removeAll(PosixFilePermissions.fromString("rwx------"));
    if (!others.isEmpty()) {
      LOG.warn("OPC UA: {} holds the private key and may be opened by others; chmod 600 it", file);
    }
  }

  private static FileAttribute<?>[] only(String permissions) {
    return isPosix()
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString(permissions))
        }
        : new FileAttribute<?>[0];
  }

  private static boolean isPosix() {
    return FileSystems.getDefault().supportedFileAttributeViews().contains("posix");
  }
}
