package io.strapline.level;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.stream.Collectors.toSet;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import io.strapline.level.vessel.CapacityCurve;
import java.io.IOException;
import java.io.InputStream;
import java.lang.module.ModuleDescriptor;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/**
 * Holds the house rules of the library: who may import whom, no cycles, nothing but java.base, no
 * input or output, threads or clock.
 */
class ArchitectureTest {

  private static final String ROOT = "io.strapline.level";

  private static final String INTERNAL = "internal";

  /** What each package may import besides itself, {@code internal} and {@code units}. */
  private static final Map<String, Set<String>> MAY_IMPORT =
      Map.ofEntries(
          Map.entry(INTERNAL, Set.of()),
          Map.entry("units", Set.of()),
          Map.entry("reading", Set.of()),
          Map.entry("vessel", Set.of()),
          Map.entry("loop", Set.of("reading")),
          Map.entry("signal", Set.of("reading")),
          Map.entry("alarm", Set.of("reading")),
          Map.entry("diagnosis", Set.of("reading")),
          Map.entry("table", Set.of("vessel")),
          Map.entry("surface", Set.of("vessel", "reading")),
          Map.entry("inventory", Set.of("vessel", "reading")),
          Map.entry("uncertainty", Set.of("vessel", "table", "reading")),
          Map.entry("point", pointMayImport()),
          Map.entry("plan", planMayImport()));

  private static final JavaClasses LIBRARY = new ClassFileImporter().importPath(classesFolder());

  private static Set<String> pointMayImport() {
    return Set.of(
        "alarm",
        "diagnosis",
        "loop",
        "signal",
        "surface",
        "table",
        "vessel",
        "inventory",
        "reading");
  }

  private static Set<String> planMayImport() {
    Set<String> all = new TreeSet<>(pointMayImport());
    all.add("point");
    return Set.copyOf(all);
  }

  private static Path classesFolder() {
    try {
      return Path.of(
          CapacityCurve.class.getProtectionDomain().getCodeSource().getLocation().toURI());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  /** The names below the root of the packages that hold classes. */
  private static Set<String> packages() {
    return LIBRARY.stream()
        .map(JavaClass::getPackageName)
        .filter(name -> name.startsWith(ROOT + "."))
        .map(name -> name.substring(ROOT.length() + 1))
        .collect(toSet());
  }

  private static String[] allowed(String name) {
    List<String> allowed = new ArrayList<>(List.of("java..", "org.jspecify.annotations"));
    allowed.add(ROOT + "." + name);
    if (!name.equals(INTERNAL)) {
      allowed.add(ROOT + "." + INTERNAL);
    }
    if (!name.equals(INTERNAL) && !name.equals("units")) {
      allowed.add(ROOT + ".units");
    }
    MAY_IMPORT.getOrDefault(name, Set.of()).forEach(other -> allowed.add(ROOT + "." + other));
    return allowed.toArray(String[]::new);
  }

  /** A new package gets its place in the table before it gets a class. */
  @Test
  void everyPackageHasItsPlaceInTheTable() {
    Set<String> unknown = new TreeSet<>(packages());
    unknown.removeAll(MAY_IMPORT.keySet());
    assertEquals(Set.of(), unknown);
    assertTrue(packages().containsAll(Set.of("units", "reading", "vessel", "point")));
  }

  @Test
  void packagesImportOnlyWhatTheTableAllows() {
    for (String name : packages()) {
      classes()
          .that()
          .resideInAPackage(ROOT + "." + name)
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage(allowed(name))
          .check(LIBRARY);
    }
  }

  @Test
  void packagesHaveNoCycles() {
    slices().matching(ROOT + ".(*)..").should().beFreeOfCycles().check(LIBRARY);
  }

  @Test
  void onlyTheBaseModuleOfThePlatformIsUsed() {
    noClasses().should().dependOnClassesThat(areOfAnotherPlatformModule()).check(LIBRARY);
  }

  private static DescribedPredicate<JavaClass> areOfAnotherPlatformModule() {
    return DescribedPredicate.describe(
        "are of a platform module other than java.base",
        type -> type.getName().startsWith("java") && !moduleOf(type).equals("java.base"));
  }

  private static String moduleOf(JavaClass type) {
    try {
      Class<?> loaded = Class.forName(type.getBaseComponentType().getName(), false, null);
      return String.valueOf(loaded.getModule().getName());
    } catch (ClassNotFoundException e) {
      return "not of the platform's base loader";
    }
  }

  @Test
  void nothingReadsWritesWaitsOrAsksTheTime() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "java.io..",
            "java.net..",
            "java.nio.file..",
            "java.nio.channels..",
            "java.util.concurrent..")
        .orShould()
        .dependOnClassesThat()
        .areAssignableTo(Thread.class)
        .orShould()
        .dependOnClassesThat()
        .areAssignableTo(Clock.class)
        .orShould()
        .callMethod(Instant.class, "now")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .check(LIBRARY);
  }

  @Test
  void everyPackageIsDescribedAndNullMarked() throws ClassNotFoundException {
    for (String name : packages()) {
      Class<?> info = Class.forName(ROOT + "." + name + ".package-info");
      assertTrue(info.isAnnotationPresent(NullMarked.class), name + " is not @NullMarked");
    }
  }

  @Test
  void everyPackageButInternalIsExportedAndNothingIsOpen() throws IOException {
    Set<String> expected = new TreeSet<>();
    packages().stream()
        .filter(name -> !name.equals(INTERNAL))
        .forEach(name -> expected.add(ROOT + "." + name));
    Set<String> exported = new TreeSet<>();
    module().exports().stream()
        .filter(export -> !export.isQualified())
        .forEach(export -> exported.add(export.source()));
    assertEquals(expected, exported);
    assertEquals(Set.of(), module().opens());
  }

  /** jspecify holds annotations for the compiler and is not needed at run time. */
  @Test
  void theModuleNeedsNothingAtRunTime() throws IOException {
    Set<String> needed =
        module().requires().stream()
            .filter(r -> !r.modifiers().contains(ModuleDescriptor.Requires.Modifier.STATIC))
            .map(ModuleDescriptor.Requires::name)
            .collect(toSet());
    assertEquals(Set.of("java.base"), needed);
  }

  private static ModuleDescriptor module() throws IOException {
    try (InputStream in = Files.newInputStream(classesFolder().resolve("module-info.class"))) {
      return ModuleDescriptor.read(in);
    }
  }
}
