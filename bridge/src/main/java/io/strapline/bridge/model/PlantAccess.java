package io.strapline.bridge.model;

/**
 * What a publisher may use of a running plant. Immutable.
 *
 * @param store the latest snapshots
 * @param clock the plant's clock
 * @param operations what operators may do
 */
public record PlantAccess(SnapshotStore store, PlantClock clock, Operations operations) {}
