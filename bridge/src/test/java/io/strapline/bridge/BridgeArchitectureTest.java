package io.strapline.bridge;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds the bridge to the table of packages in its design: who may see whom. */
class BridgeArchitectureTest {

  private static final String ROOT = "io.strapline.bridge";

  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages(ROOT);

  /**
   * What each part may see beside itself and the library. {@code cli} may see the publishers, since
   * it prints the register map and the node list from the tables that the servers use.
   */
  private static final Map<String, Set<String>> MAY_SEE =
      Map.ofEntries(
          Map.entry("config", Set.of()),
          Map.entry("model", Set.of()),
          Map.entry("modbus", Set.of("config")),
          Map.entry("simulate", Set.of("model", "config")),
          Map.entry("source.replay", Set.of("model", "config")),
          Map.entry("source.modbus", Set.of("model", "config", "modbus")),
          Map.entry("source.opcua", Set.of("model", "config")),
          Map.entry("publish.opcua", Set.of("model", "config")),
          Map.entry("publish.modbus", Set.of("model", "config", "modbus")),
          Map.entry("journal", Set.of("model", "config")),
          Map.entry("page", Set.of("model", "config")),
          Map.entry(
              "app",
              Set.of(
                  "model",
                  "config",
                  "simulate",
                  "source.replay",
                  "source.modbus",
                  "source.opcua",
                  "publish.opcua",
                  "publish.modbus",
                  "journal",
                  "page")),
          Map.entry("cli", Set.of("app", "model", "config", "publish.opcua", "publish.modbus")));

  /** Returns the part of the table that a class belongs to; empty outside the bridge. */
  private static Optional<String> part(JavaClass type) {
    String inside = type.getPackageName();
    if (!inside.startsWith(ROOT + ".")) {
      return Optional.empty();
    }
    String[] names = inside.substring(ROOT.length() + 1).split("\\.", -1);
    boolean leaf = names.length > 1 && (names[0].equals("source") || names[0].equals("publish"));
    return Optional.of(leaf ? names[0] + "." + names[1] : names[0]);
  }

  @Test
  void everyPartSeesOnlyWhatTheTableAllows() {
    assertFalse(CLASSES.isEmpty());
    Set<String> wrong = new TreeSet<>();
    for (JavaClass type : CLASSES) {
      String from = part(type).orElse("nowhere");
      Set<String> allowed = MAY_SEE.getOrDefault(from, Set.of());
      if (!MAY_SEE.containsKey(from)) {
        wrong.add(type.getName() + " is in a package that is not in the table");
      }
      for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
        Optional<String> to = part(dependency.getTargetClass().getBaseComponentType());
        if (to.isPresent() && !to.get().equals(from) && !allowed.contains(to.get())) {
          wrong.add(dependency.getDescription());
        }
      }
    }
    assertEquals(Set.of(), wrong);
  }

  @Test
  void packagesFormNoCycle() {
    slices().matching(ROOT + ".(**)").should().beFreeOfCycles().check(CLASSES);
  }

  @ParameterizedTest
  @CsvSource({
    "org.eclipse.milo.., ..opcua..",
    "io.netty.., ..opcua..",
    "org.bouncycastle.., ..opcua..",
    "com.ghgande.j2mod.., ..modbus..",
    "com.fazecast.jSerialComm.., ..bridge.modbus..",
    "org.snakeyaml.engine.., ..config..",
    "picocli.., ..cli..",
    "ch.qos.logback.., ..cli.."
  })
  void everyLibraryStaysInItsPackage(String library, String home) {
    noClasses()
        .that()
        .resideOutsideOfPackage(home)
        .should()
        .dependOnClassesThat()
        .resideInAPackage(library)
        .check(CLASSES);
  }

  @Test
  void nobodyWritesToTheStandardStreamsButTheCommandLine() {
    noClasses()
        .that()
        .resideOutsideOfPackage("..cli..")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .check(CLASSES);
  }

  @Test
  void everyPackageSaysWhatItIsFor() throws IOException {
    Path sources = Path.of("src/main/java");
    List<Path> silent;
    try (Stream<Path> files = Files.walk(sources)) {
      silent =
          files
              .filter(file -> file.toString().endsWith(".java"))
              .map(file -> file.resolveSibling("package-info.java"))
              .distinct()
              .filter(file -> !Files.exists(file))
              .toList();
    }
    assertEquals(List.of(), silent);
  }
}
