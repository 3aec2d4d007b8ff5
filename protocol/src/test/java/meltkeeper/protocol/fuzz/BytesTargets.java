package meltkeeper.protocol.fuzz;

import meltkeeper.protocol.Decoder;
import meltkeeper.protocol.Origin;
import meltkeeper.protocol.Payload;
import meltkeeper.protocol.gcode.GcodeDecoder;
import meltkeeper.protocol.gcode.LineSplitter;
import meltkeeper.protocol.mapping.MappingDecoder;
import meltkeeper.protocol.motion.JobEstimate;
import meltkeeper.protocol.motion.JobEstimator;
import meltkeeper.protocol.motion.MotionLimits;
import meltkeeper.protocol.recording.RecordingLine;

/**
 * What takes any bytes: every parser of telemetry. An exception or a broken promise is a fault of
 * ours.
 */
final class BytesTargets {

  private final MappingDecoder json = Listener.json();
  private final MappingDecoder number = Listener.number();

  void gcodeLines(byte[] bytes) {
    Decoder decoder = new GcodeDecoder("ibis");
    LineSplitter lines = new LineSplitter();
    Listener listener = new Listener();
    lines.feed(
        bytes,
        line ->
            listener.line(
                decoder,
                line,
                lines.lineNumber() % 3 == 0 ? Origin.Direction.OUT : Origin.Direction.IN));
  }

  void payloads(byte[] bytes) {
    new Listener().message(json, bytes).message(number, bytes);
  }

  void recordingLines(byte[] bytes) {
    RecordingLine.parse(
        bytes,
        received ->
            RecordingLine.parse(
                RecordingLine.print(received),
                again -> {
                  if (!again.payload().equals(received.payload())) {
                    throw new AssertionError("printed and read again: " + again);
                  }
                },
                rejected -> {
                  throw new AssertionError("printed and not read again: " + rejected);
                }),
        rejected -> {});
  }

  void gcodeFiles(byte[] bytes) {
    JobEstimator estimator =
        new JobEstimator(
            MotionLimits.DEFAULT,
            (hotEnd, from, until, seconds) -> {
              if (!(seconds >= 0 && seconds < Double.POSITIVE_INFINITY)) {
                throw new AssertionError(seconds + " s from " + from + " to " + until);
              }
            });
    LineSplitter lines = new LineSplitter();
    lines.feed(bytes, line -> estimator.accept(line, lines.lineNumber()));
    estimator.accept(Payload.of(bytes), lines.lineNumber());
    JobEstimate estimate = estimator.finish();
    if (!(estimate.seconds() >= 0 && estimate.seconds() < Double.POSITIVE_INFINITY)) {
      throw new AssertionError("a batch of " + estimate.seconds() + " s");
    }
  }
}
