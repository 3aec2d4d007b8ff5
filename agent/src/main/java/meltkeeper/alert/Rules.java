package meltkeeper.alert;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import meltkeeper.alert.route.QuietHours;
import meltkeeper.part.Moments;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Alert;
import meltkeeper.store.Delivery;
import meltkeeper.store.Letter;

/**
 * What is to be done with a letter now. Quiet hours go by the wall clock, pauses by the steady one.
 *
 * @param quiet hours of the route
 * @param actAfter for a route that acts instead of telling: how long it waits, and is cancelled by
 *     an acknowledgement or an all-clear meanwhile
 */
record Rules(Optional<QuietHours> quiet, Optional<Duration> actAfter) {

  /** What to do. */
  enum What {
    TRY,
    /** Not due yet. */
    WAIT,
    /** Look again at {@code untilNanos}. */
    PUT_OFF,
    CANCEL
  }

  /** What to do, and why. */
  record Verdict(What what, long untilNanos, String why) {
    static Verdict of(What what) {
      return new Verdict(what, 0, "");
    }
  }

  Verdict judge(Letter letter, Arrival now) {
    if (actAfter.isPresent()) {
      return judgeAction(letter, actAfter.get(), now.steadyNanos());
    }
    boolean isVain = letter.isAcknowledged() || letter.isOver();
    if (letter.alert().phase() == Alert.Phase.REMINDER && isVain) {
      return new Verdict(What.CANCEL, 0, "no reminder is needed any more");
    }
    if (isLater(letter.delivery(), now.steadyNanos())) {
      return Verdict.of(What.WAIT);
    }
    Optional<Instant> end =
        letter.alert().topic().isPressing()
            ? Optional.empty()
            : quiet.flatMap(hours -> hours.endIfQuiet(Moments.instant(now.wallNanos())));
    return end.map(until -> Moments.nanos(until) - now.wallNanos())
        .map(pause -> new Verdict(What.PUT_OFF, now.steadyNanos() + pause, "quiet hours"))
        .orElse(Verdict.of(What.TRY));
  }

  private static Verdict judgeAction(Letter letter, Duration delay, long nowNanos) {
    if (letter.alert().phase() != Alert.Phase.BEGAN) {
      return new Verdict(What.CANCEL, 0, "an action is taken at the beginning alone");
    }
    if (letter.isAcknowledged() || letter.isOver()) {
      return new Verdict(
          What.CANCEL, 0, letter.isOver() ? "it was over before" : "it was acknowledged before");
    }
    if (letter.delivery().attempts() == 0 && letter.delivery().detail().isEmpty()) {
      return new Verdict(
          What.PUT_OFF, nowNanos + delay.toNanos(), "acknowledge the alert to cancel it");
    }
    return Verdict.of(isLater(letter.delivery(), nowNanos) ? What.WAIT : What.TRY);
  }

  /** A delivery never tried is due whatever its clock said. */
  private static boolean isLater(Delivery delivery, long nowNanos) {
    boolean isUntouched = delivery.attempts() == 0 && delivery.detail().isEmpty();
    return !isUntouched && delivery.nextNanos() > nowNanos;
  }
}
