/**
 * Level measurement for embedding: units, loop, conditioning, vessel geometry, capacity tables,
 * alarms and the measuring point that runs them all. No I/O, no threads, no clock, no logging.
 */
module io.strapline.level {
  requires static transitive org.jspecify;

  exports io.strapline.level.alarm;
  exports io.strapline.level.diagnosis;
  exports io.strapline.level.inventory;
  exports io.strapline.level.loop;
  exports io.strapline.level.plan;
  exports io.strapline.level.point;
  exports io.strapline.level.reading;
  exports io.strapline.level.signal;
  exports io.strapline.level.surface;
  exports io.strapline.level.table;
  exports io.strapline.level.uncertainty;
  exports io.strapline.level.units;
  exports io.strapline.level.vessel;
}
