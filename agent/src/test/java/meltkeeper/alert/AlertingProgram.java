package meltkeeper.alert;

import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.alert.route.RouteSettings;
import meltkeeper.alert.route.Routes;
import meltkeeper.alert.route.Sending;
import meltkeeper.caution.Guard;
import meltkeeper.ledger.Limits;
import meltkeeper.part.Part;
import meltkeeper.part.PartEvent;
import meltkeeper.pipeline.Calling;
import meltkeeper.pipeline.Intake;
import meltkeeper.protocol.Arrival;
import meltkeeper.protocol.Reading;
import meltkeeper.protocol.Sample;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;

/**
 * A process of its own in which a liner is too hot again and again, and a route calls. Prints the
 * beginning of each episode once it is committed, or {@code drained} when nothing waits any more.
 */
final class AlertingProgram {

  static final String DRAINED = "drained";

  private static final Calling CALLING =
      new Calling(
          hotEnd -> new Guard(OptionalDouble.empty(), 150, Long.MAX_VALUE, Long.MAX_VALUE),
          Map.of("liner", 250.0),
          topic -> List.of("phone"),
          hotEnd -> Optional.empty(),
          Duration.ofMinutes(10).toNanos());

  /** It calls far more often than its receiver takes; here nothing may be given up. */
  private static final OutboxLimits ALL_MAY_WAIT = new OutboxLimits(Duration.ofDays(90), 1_000_000);

  private AlertingProgram() {}

  public static void main(String[] args) {
    boolean feeds = Boolean.parseBoolean(args[2]);
    RouteSettings.Webhook hook =
        new RouteSettings.Webhook(
            URI.create(args[1]), Optional.empty(), Map.of(), Optional.empty(), Optional.empty());
    AlertSettings settings = Calls.alerts(List.of(Calls.settings("phone", hook)), ALL_MAY_WAIT);
    try (Store store = Stores.open(args[0])) {
      store.claim();
      fitALiner(store);
      Routes routes =
          new Routes(
              Calls.WORDS,
              settings.remind(),
              (broker, timeout) -> {
                throw new IllegalStateException("no broker here");
              },
              Sending.NOWHERE);
      Pace brisk = new Pace(Duration.ofMillis(1), Duration.ofMillis(5), Integer.MAX_VALUE);
      try (Dispatch dispatch =
          new Dispatch(
              settings,
              routes,
              brisk,
              store.outbox(),
              () -> Arrival.at(System.nanoTime()),
              Optional::empty)) {
        if (feeds) {
          feed(store);
        }
        while (!store.outbox().waiting().isEmpty()) {
          LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(5));
        }
        System.out.println(DRAINED + " " + dispatch.states().size());
      }
    }
  }

  private static void fitALiner(Store store) {
    if (store.revision() == 0) {
      store.saveParts(
          0,
          List.of(
              Part.added("L-014", "liner", Optional.empty(), 0)
                  .with(List.of(new PartEvent.Fitted(0, Calls.HERON, Optional.empty())))));
    }
  }

  private static void feed(Store store) {
    Intake intake =
        new Intake(
            (received, outlet) -> {},
            hotEnd -> Limits.DEFAULT,
            hotEnd -> meltkeeper.jam.WatchSettings.DEFAULT,
            store,
            CALLING);
    long at =
        store.accounts().isEmpty() ? Calls.MORNING : store.accounts().get(0).creditedUntilNanos();
    while (true) {
      long began = at + 20 * Calls.SECOND;
      heard(intake, at + 10 * Calls.SECOND, 255);
      heard(intake, began, 255);
      intake.commit();
      // An episode that went on when the program was killed goes on now, and is no new one.
      System.out.println(store.outbox().open().get(0).latest().episode().beganNanos());
      at = began + 10 * Calls.SECOND;
      heard(intake, at, 230);
      intake.commit();
      LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(10));
    }
  }

  private static void heard(Intake intake, long atNanos, double celsius) {
    intake.reading(new Reading.HotEndTemperature(Sample.arrived(Calls.HERON, atNanos), celsius));
  }
}
