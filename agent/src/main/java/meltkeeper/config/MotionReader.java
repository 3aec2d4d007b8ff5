package meltkeeper.config;

import meltkeeper.protocol.motion.MotionLimits;

/** Reads what a printer can do. */
final class MotionReader {

  private MotionReader() {}

  static MotionLimits read(Entry entry) {
    Fields fields = Fields.of(entry, Section.MOTION);
    return new MotionLimits(
        fields.get(Keys.ACCELERATION),
        fields.get(Keys.TRAVEL_ACCELERATION),
        fields.get(Keys.FILAMENT_ACCELERATION),
        fields.get(Keys.JUNCTION_DEVIATION),
        fields.get(Keys.PLATE_SPEED),
        fields.get(Keys.HEIGHT_SPEED),
        fields.get(Keys.FILAMENT_SPEED),
        fields.get(Keys.HEATING),
        fields.get(Keys.COOLING),
        fields.get(Keys.PLATE_HEATING),
        fields.get(Keys.HOMING).toMillis() / 1000.0,
        fields.get(Keys.LOOK_AHEAD));
  }
}
