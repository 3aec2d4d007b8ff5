package meltkeeper.alert;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Predicate;
import meltkeeper.alert.route.JamAction;
import meltkeeper.alert.route.QuietHours;
import meltkeeper.alert.route.Sending;
import meltkeeper.part.Moments;
import meltkeeper.protocol.Arrival;
import meltkeeper.store.Alert;
import meltkeeper.store.Delivery;
import meltkeeper.store.Letter;

/**
 * What is to be done with a letter now. Quiet hours go by the wall clock, pauses by the steady one.
 *
 * @param quiet hours of the route
 * @param act for a route that acts instead of telling
 */
record Rules(Optional<QuietHours> quiet, Optional<Act> act) {

  /**
   * When something is done.
   *
   * @param after so long, unless an acknowledgement or an all-clear cancels it meanwhile
   * @param reaches true for a printer that anything can be done about
   */
  record Act(Duration after, Predicate<String> reaches) {}

  /** Those of a jam action. */
  static Rules of(JamAction action, Sending sending) {
    return new Rules(
        Optional.empty(),
        Optional.of(new Act(action.delay(), printer -> action.reaches(sending.reaches(printer)))));
  }

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
    if (act.isPresent()) {
      return judgeAction(letter, act.get(), now.steadyNanos());
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

  private static Verdict judgeAction(Letter letter, Act act, long nowNanos) {
    if (letter.alert().phase() != Alert.Phase.BEGAN) {
      return new Verdict(What.CANCEL, 0, "an action is taken at the beginning alone");
    }
    if (letter.isAcknowledged() || letter.isOver()) {
      return new Verdict(
          What.CANCEL, 0, letter.isOver() ? "it was over before" : "it was acknowledged before");
    }
    String printer = letter.alert().subject().printerName().orElse("");
    if (!act.reaches().test(printer)) {
      return new Verdict(What.CANCEL, 0, "there is no way to " + printer);
    }
    if (letter.delivery().attempts() == 0 && letter.delivery().detail().isEmpty()) {
      return new Verdict(
          What.PUT_OFF, nowNanos + act.after().toNanos(), "acknowledge the alert to cancel it");
    }
    return Verdict.of(isLater(letter.delivery(), nowNanos) ? What.WAIT : What.TRY);
  }

  /** A delivery never tried is due whatever its clock said. */
  private static boolean isLater(Delivery delivery, long nowNanos) {
    boolean isUntouched = delivery.attempts() == 0 && delivery.detail().isEmpty();
    return !isUntouched && delivery.nextNanos() > nowNanos;
  }
}
