/**
 * Benchmarks of the library with JMH, each beside a baseline in the same run, so that only ratios
 * need be compared between machines. Entry types: {@link
 * io.strapline.benchmarks.CapacityLookUpBenchmark}, {@link
 * io.strapline.benchmarks.CompiledCurveBenchmark} and {@link
 * io.strapline.benchmarks.PointChainBenchmark}. May import the library and Apache Commons Math.
 *
 * <p>Build and run from the root of the project ({@code -prof gc} adds the bytes allocated):
 *
 * <pre>
 * mvn -q -Pbench -pl examples/benchmarks -am package -DskipTests -Dmaven.javadoc.skip
 * java -jar examples/benchmarks/target/benchmarks.jar -prof gc
 * </pre>
 */
@NullMarked
package io.strapline.benchmarks;

import org.jspecify.annotations.NullMarked;
