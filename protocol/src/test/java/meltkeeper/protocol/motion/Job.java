package meltkeeper.protocol.motion;

import java.util.ArrayList;
import java.util.List;
import meltkeeper.protocol.Payload;

/** A file of a few lines, reckoned. */
final class Job {

  /** Acceleration 1000 mm/s² for all moves, full stops at corners. */
  static final MotionLimits STOPPING =
      MotionLimits.DEFAULT.withAcceleration(1000).withJunctionDeviation(0);

  /** A stretch of heat as it was told. */
  record Stretch(int hotEnd, double from, double until, double seconds) {}

  final List<Stretch> stretches = new ArrayList<>();
  final JobEstimate estimate;

  private Job(MotionLimits limits, List<String> lines) {
    JobEstimator estimator =
        new JobEstimator(
            limits,
            (hotEnd, from, until, seconds) ->
                stretches.add(new Stretch(hotEnd, from, until, seconds)));
    for (int i = 0; i < lines.size(); i++) {
      estimator.accept(Payload.of(lines.get(i)), i + 1);
    }
    this.estimate = estimator.finish();
  }

  static Job of(MotionLimits limits, String... lines) {
    return new Job(limits, List.of(lines));
  }

  static Job of(MotionLimits limits, List<String> lines) {
    return new Job(limits, lines);
  }

  static double seconds(MotionLimits limits, String... lines) {
    return of(limits, lines).estimate.seconds();
  }

  static double seconds(MotionLimits limits, List<String> lines) {
    return of(limits, lines).estimate.seconds();
  }
}
