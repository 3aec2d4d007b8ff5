package meltkeeper.web.page;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import meltkeeper.jam.Cause;
import meltkeeper.jam.Level;
import meltkeeper.jam.Outlook;
import meltkeeper.part.Moments;
import meltkeeper.pipeline.HotEndLive;
import meltkeeper.protocol.HotEnd;
import meltkeeper.protocol.JobState;

/**
 * A hot end at a glance.
 *
 * @param standing what matters most of it
 * @param doing what the printer does, with its job and material
 * @param percent of the job; empty when nothing tells
 * @param temperature now, and asked for
 * @param hot true when it would burn a hand
 * @param watch the jam watch's reason in words
 * @param more what the watch adds: minutes to a stall, a likely cause
 * @param wear its parts, the most worn first
 * @param heard when it was last heard, in words
 */
public record HotEndCard(
    HotEnd hotEnd,
    Standing standing,
    String doing,
    OptionalInt percent,
    String temperature,
    boolean hot,
    String watch,
    List<String> more,
    List<Wear> wear,
    String heard) {

  private static final long SILENT_NANOS = Duration.ofMinutes(2).toNanos();
  private static final double BURNS_CELSIUS = 50;

  public HotEndCard {
    more = List.copyOf(more);
    wear = List.copyOf(wear);
  }

  /** Of a hot end that was heard. */
  static HotEndCard of(HotEndLive live, List<Wear> wear, Frame frame) {
    boolean silent = frame.times().nowNanos() - live.heardNanos() > SILENT_NANOS;
    return new HotEndCard(
        live.hotEnd(),
        standing(live, wear, silent),
        doing(live, frame),
        live.state().filter(s -> s == JobState.PRINTING).isPresent() && live.progress().isPresent()
            ? OptionalInt.of((int) Math.round(100 * live.progress().getAsDouble()))
            : OptionalInt.empty(),
        temperature(live, frame),
        live.celsius().orElse(0) > BURNS_CELSIUS,
        live.watch().because(),
        more(live.watch(), frame),
        wear,
        frame.say(
            silent ? "card.silent" : "card.heard",
            frame.times().ago(Moments.instant(Math.max(0, live.heardNanos())))));
  }

  /** Of a printer of the configuration that was not heard yet. */
  static HotEndCard unheard(String printer, List<Wear> wear, Frame frame) {
    return new HotEndCard(
        HotEnd.first(printer),
        Standing.UNHEARD,
        frame.say("card.unheard"),
        OptionalInt.empty(),
        frame.say("card.no-temperature"),
        false,
        frame.say("card.unheard-watch"),
        List.of(),
        wear,
        frame.say("card.unheard"));
  }

  private static Standing standing(HotEndLive live, List<Wear> wear, boolean silent) {
    Level level = live.watch().level();
    if (level == Level.STALLED) {
      return Standing.STALLED;
    }
    if (level == Level.NARROWING) {
      return Standing.NARROWING;
    }
    if (silent) {
      return Standing.SILENT;
    }
    if (wear.stream().anyMatch(Wear::overdue)) {
      return Standing.OVERDUE;
    }
    if (level == Level.BLIND) {
      return Standing.BLIND;
    }
    return live.state()
        .map(
            state ->
                switch (state) {
                  case PRINTING -> Standing.WORKING;
                  case PAUSED -> Standing.PAUSED;
                  case IDLE -> Standing.IDLE;
                })
        .orElse(Standing.IDLE);
  }

  private static String doing(HotEndLive live, Frame frame) {
    String state =
        live.state()
            .map(s -> frame.say("state." + s.word()))
            .orElseGet(() -> frame.say("state.untold"));
    String job = live.job().isEmpty() ? state : frame.say("card.job", state, live.job());
    return live.material().isEmpty() ? job : frame.say("card.material", job, live.material());
  }

  private static String temperature(HotEndLive live, Frame frame) {
    if (live.celsius().isEmpty()) {
      return frame.say("card.no-temperature");
    }
    String now = String.format(Locale.ROOT, "%.0f", live.celsius().getAsDouble());
    if (live.targetCelsius().isEmpty()) {
      return frame.say("card.temperature", now);
    }
    double target = live.targetCelsius().getAsDouble();
    return target > 0
        ? frame.say("card.temperature-of", now, String.format(Locale.ROOT, "%.0f", target))
        : frame.say("card.temperature-off", now);
  }

  private static List<String> more(Outlook watch, Frame frame) {
    List<String> more = new ArrayList<>();
    watch
        .minutesToStall()
        .ifPresent(
            m ->
                more.add(
                    frame.say(
                        "card.minutes",
                        String.format(Locale.ROOT, "%.0f", m.low()),
                        String.format(Locale.ROOT, "%.0f", m.high()))));
    watch.cause().map(Cause::suggestion).ifPresent(more::add);
    return more;
  }

  /** {@code heron}, or {@code heron/1} for a second hot end. */
  public String name() {
    return hotEnd.toString();
  }

  /** The address of its page. */
  public String address() {
    return Addresses.printer(hotEnd.printer());
  }

  /** The most worn of its parts. */
  public Optional<Wear> worn() {
    return wear.stream().findFirst();
  }

  /** True when a search finds it. */
  boolean matches(String words) {
    String all =
        (name() + " " + doing + " " + String.join(" ", wear.stream().map(Wear::id).toList()))
            .toLowerCase(Locale.ROOT);
    return all.contains(words.strip().toLowerCase(Locale.ROOT));
  }
}
