package meltkeeper.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import meltkeeper.config.ConfigReader;
import meltkeeper.config.Settings;
import meltkeeper.source.SteadyClock;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import org.jspecify.annotations.Nullable;

/**
 * The whole agent in a process of its own, as {@code run} joins it, but it commits as often as its
 * second argument says, in milliseconds, and its wall clock is off by as many seconds as the third
 * says. Prints {@value #READY} and the port of its page once it listens. A line {@code wall
 * SECONDS} on its standard input sets its wall clock anew; any other ends it in good order.
 */
public final class AgentProgram {

  public static final String READY = "ready ";

  public static final String WALL = "wall ";

  private AgentProgram() {}

  public static void main(String[] args) throws IOException {
    Settings settings =
        ConfigReader.read(Path.of(args[0]))
            .fold(
                valid -> valid,
                faults -> {
                  throw new IllegalArgumentException(faults.toString());
                });
    AtomicLong offSeconds = new AtomicLong(args.length > 2 ? Long.parseLong(args[2]) : 0);
    BufferedReader orders =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    try (Store store = Stores.open(settings.storeUrl());
        Agent agent =
            new Agent(
                settings,
                store,
                SteadyClock.notBefore(
                    Agent.latestNanos(store), () -> wallNanos(offSeconds.get()), System::nanoTime),
                Duration.ofMillis(Long.parseLong(args[1])))) {
      System.out.println(READY + agent.port());
      @Nullable String order = orders.readLine();
      while (order != null && order.startsWith(WALL)) {
        offSeconds.set(Long.parseLong(order.substring(WALL.length())));
        order = orders.readLine();
      }
    }
  }

  private static long wallNanos(long offSeconds) {
    Instant now = Instant.now().plusSeconds(offSeconds);
    return TimeUnit.SECONDS.toNanos(now.getEpochSecond()) + now.getNano();
  }
}
