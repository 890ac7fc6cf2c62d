/**
 * What travels between the parts of the bridge: clock, snapshots, sources and publishers. Entry
 * type: {@link io.strapline.bridge.model.SnapshotStore}. May import lib-level only.
 */
@NullMarked
package io.strapline.bridge.model;

import org.jspecify.annotations.NullMarked;
