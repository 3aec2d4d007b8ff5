package meltkeeper.source;

import java.time.Duration;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import meltkeeper.protocol.gcode.Report;
import meltkeeper.protocol.gcode.Request;
import meltkeeper.protocol.gcode.Request.Once;
import meltkeeper.protocol.gcode.Request.Ordered;
import meltkeeper.protocol.gcode.Request.ReportEvery;

/**
 * What to ask a printer, and when: a state machine without a clock, told each report it hears.
 *
 * <p>It asks for reports by themselves ({@code M155}) first. Where the printer does not know that,
 * or takes it and then sends none, it asks for temperatures ({@code M105}) at each period. It asks
 * how far the job is ({@code M27}) at every second period, and while a job prints, or where the
 * printer cannot tell, for the position ({@code M114}) at each period. What a printer says it does
 * not know is not asked again until it restarts. Lines that the owner wants sent go before all of
 * it.
 *
 * <p>One request is under way at a time. Its answer is awaited for {@link #PATIENCE}, counted anew
 * from each {@code busy:}, however long that goes on. A printer that never answers is asked again
 * with twice the patience each time, so that a long heating does not fill its buffer.
 *
 * <p>Times are nanoseconds of a monotonic clock with any zero. Not safe for use by several threads.
 */
public final class Conversation {

  /** How long an answer is awaited at first. */
  public static final Duration PATIENCE = Duration.ofSeconds(10);

  private static final Duration MOST_PATIENCE = Duration.ofMinutes(4);
  private static final int PERIODS_UNTIL_STALE = 4;
  private static final int TRIES_FOR_REPORTS = 3;
  private static final long NANOS_PER_SECOND = TimeUnit.SECONDS.toNanos(1);

  private enum Temperatures {
    /** Whether the printer reports by itself is still to be asked. */
    UNTRIED,
    /** It said that it will. */
    AUTOMATIC,
    /** It does not: it is asked each time. */
    POLLED
  }

  private final long everyNanos;
  private final long settleNanos;
  private final Map<Once, Long> dueNanos = new EnumMap<>(Once.class);
  private final Set<Once> unknown = new HashSet<>();
  private Temperatures temperatures = Temperatures.UNTRIED;
  private Optional<Pending> pending = Optional.empty();
  private final Deque<Ordered> ordered = new ArrayDeque<>();
  private boolean printing;
  private int triesForReports;
  private long readyNanos;
  private long temperatureNanos;
  private long heardNanos;
  private long patienceNanos;

  /** A request under way, and when it is given up. */
  private record Pending(Request request, long deadlineNanos) {}

  /**
   * @param every the period of asking, positive
   * @param settle how long to say nothing after the connection is made or the printer restarted,
   *     unless the printer speaks: a controller that just started may take it for a new program
   */
  public Conversation(Duration every, Duration settle, long nowNanos) {
    if (every.isZero() || every.isNegative()) {
      throw new IllegalArgumentException("asking every " + every + "; allowed: above zero");
    }
    this.everyNanos = every.toNanos();
    this.settleNanos = settle.toNanos();
    this.heardNanos = nowNanos;
    begin(nowNanos);
  }

  /** Takes note of what the printer said. */
  public void hear(Report report, long nowNanos) {
    heardNanos = nowNanos;
    if (report.isRestart()) {
      begin(nowNanos);
      return;
    }
    readyNanos = Math.min(readyNanos, nowNanos);
    if (report.tellsTemperature()) {
      temperatureNanos = nowNanos;
    }
    if (report instanceof Report.StorageJob) {
      printing = true;
    } else if (report instanceof Report.NoStorageJob) {
      printing = false;
    }
    pending.ifPresent(asked -> answer(asked, report, nowNanos));
  }

  /** What to send now, if anything; it counts as sent. */
  public Optional<Request> due(long nowNanos) {
    if (nowNanos - readyNanos < 0) {
      return Optional.empty();
    }
    if (pending.isPresent()) {
      if (nowNanos - pending.get().deadlineNanos() < 0) {
        return Optional.empty();
      }
      giveUp(pending.get().request(), nowNanos);
    }
    Optional<Request> next = choose(nowNanos);
    next.ifPresent(
        request -> pending = Optional.of(new Pending(request, nowNanos + patienceNanos)));
    return next;
  }

  /** True when an owner's line would be sent at once. */
  boolean isFree(long nowNanos) {
    boolean isReady = nowNanos - readyNanos >= 0;
    return isReady
        && ordered.isEmpty()
        && pending.map(asked -> nowNanos - asked.deadlineNanos() >= 0).orElse(true);
  }

  /** Sends the owner's lines before anything else; a restart of the printer forgets them. */
  void order(List<Ordered> lines) {
    ordered.addAll(lines);
  }

  /** How long nothing will be due, unless something is heard; at most one period. */
  public Duration idle(long nowNanos) {
    long wait = everyNanos;
    if (nowNanos - readyNanos < 0) {
      wait = readyNanos - nowNanos;
    } else if (pending.isPresent()) {
      wait = pending.get().deadlineNanos() - nowNanos;
    } else if (!ordered.isEmpty()) {
      wait = 0;
    } else {
      for (long due : dueNanos.values()) {
        wait = Math.min(wait, due - nowNanos);
      }
    }
    return Duration.ofNanos(Math.max(0, Math.min(wait, everyNanos)));
  }

  /** How long the printer has said nothing. */
  public Duration silence(long nowNanos) {
    return Duration.ofNanos(nowNanos - heardNanos);
  }

  private void begin(long nowNanos) {
    temperatures = Temperatures.UNTRIED;
    pending = Optional.empty();
    ordered.clear();
    unknown.clear();
    printing = false;
    triesForReports = 0;
    patienceNanos = PATIENCE.toNanos();
    readyNanos = nowNanos + settleNanos;
    temperatureNanos = nowNanos;
    for (Once request : Once.values()) {
      dueNanos.put(request, nowNanos);
    }
  }

  private void answer(Pending asked, Report report, long nowNanos) {
    Request request = asked.request();
    if (report.isBusy()) {
      pending = Optional.of(new Pending(request, nowNanos + patienceNanos));
    } else if (report.rejects(request)) {
      reject(request);
    } else if (report.acknowledges()) {
      pending = Optional.empty();
      patienceNanos = PATIENCE.toNanos();
      if (request instanceof ReportEvery && temperatures == Temperatures.UNTRIED) {
        temperatures = Temperatures.AUTOMATIC;
        temperatureNanos = nowNanos;
      }
    }
  }

  /** The acknowledgement of a rejected request is still to come. */
  private void reject(Request request) {
    if (request instanceof Once once) {
      unknown.add(once);
      printing &= once != Once.PROGRESS;
    } else if (request instanceof ReportEvery) {
      temperatures = Temperatures.POLLED;
    }
  }

  private void giveUp(Request request, long nowNanos) {
    pending = Optional.empty();
    patienceNanos = Math.min(2 * patienceNanos, MOST_PATIENCE.toNanos());
    if (request instanceof Once once) {
      dueNanos.put(once, nowNanos);
    } else if (request instanceof ReportEvery && triesForReports >= TRIES_FOR_REPORTS) {
      temperatures = Temperatures.POLLED;
    }
  }

  private Optional<Request> choose(long nowNanos) {
    if (!ordered.isEmpty()) {
      return Optional.of(ordered.removeFirst());
    }
    if (temperatures == Temperatures.UNTRIED) {
      triesForReports++;
      return Optional.of(new ReportEvery(wholeSeconds()));
    }
    if (temperatures == Temperatures.AUTOMATIC
        && nowNanos - temperatureNanos >= PERIODS_UNTIL_STALE * reportNanos()) {
      temperatures = Temperatures.POLLED;
    }
    Optional<Once> next = Optional.empty();
    for (Once request : Once.values()) {
      if (isWanted(request) && dueNanos(request) - nowNanos <= 0) {
        if (next.isEmpty() || dueNanos(request) - dueNanos(next.get()) < 0) {
          next = Optional.of(request);
        }
      }
    }
    next.ifPresent(request -> dueNanos.put(request, nowNanos + period(request)));
    return next.map(request -> request);
  }

  private boolean isWanted(Once request) {
    if (unknown.contains(request)) {
      return false;
    }
    return switch (request) {
      case TEMPERATURES -> temperatures == Temperatures.POLLED;
      case PROGRESS -> true;
      case POSITION -> printing || unknown.contains(Once.PROGRESS);
    };
  }

  private long period(Once request) {
    return request == Once.PROGRESS ? 2 * everyNanos : everyNanos;
  }

  private long dueNanos(Once request) {
    return dueNanos.getOrDefault(request, 0L);
  }

  private long reportNanos() {
    return wholeSeconds() * NANOS_PER_SECOND;
  }

  private int wholeSeconds() {
    long seconds = (everyNanos + NANOS_PER_SECOND / 2) / NANOS_PER_SECOND;
    return (int) Math.max(1, Math.min(seconds, Request.LONGEST_PERIOD_SECONDS));
  }
}
