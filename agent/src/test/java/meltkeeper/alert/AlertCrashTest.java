package meltkeeper.alert;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpServer;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.store.Alert.Phase;
import meltkeeper.store.AlertEntry;
import meltkeeper.store.Delivery;
import meltkeeper.store.Store;
import meltkeeper.store.sql.Stores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The agent is killed at random moments while alerts are raised and their receiver fails half of
 * the time: before it has noted the alert, or after, so that a second copy must come. {@code
 * -Dalert.kills=200} kills it two hundred times, {@code -Dalert.seed=1} at other moments.
 */
final class AlertCrashTest {

  private static final int KILLS = Integer.getInteger("alert.kills", 4);
  private static final long SEED = Long.getLong("alert.seed", 20260302L);

  private final AtomicInteger copies = new AtomicInteger();

  /** Every fourth kill falls into a start, or soon after it. */
  private static final long START_NANOS = 1_500_000_000L;

  @TempDir private Path folder;

  @Test
  void agentKilledAtAnyMoment_everyEpisodeArrives_noneIsInvented_idsTellCopies() throws Exception {
    Random random = new Random(SEED);
    Map<String, String> received = new ConcurrentHashMap<>();
    HttpServer server = receiver(received);
    String url = "jdbc:sqlite:" + folder.resolve("shop.db");
    String hook = "http://127.0.0.1:" + server.getAddress().getPort() + "/";
    Set<String> committed = new HashSet<>();
    try {
      for (int kill = 0; kill < KILLS; kill++) {
        runAndKill(url, hook, random, committed);
      }
      drain(url, hook);
    } finally {
      server.stop(0);
    }
    Map<String, String> kept = new ConcurrentHashMap<>();
    Set<Delivery.State> states = EnumSet.noneOf(Delivery.State.class);
    Set<String> keptEpisodes = new HashSet<>();
    try (Store store = Stores.open(url)) {
      for (AlertEntry entry : store.outbox().latest(Integer.MAX_VALUE)) {
        entry.deliveries().forEach(delivery -> states.add(delivery.state()));
        kept.put(entry.alert().id(), entry.alert().phase().label());
        if (entry.alert().phase() == Phase.BEGAN) {
          keptEpisodes.add(Long.toString(entry.alert().episode().beganNanos()));
        }
      }
    }
    assertThat(committed).as("seed %d", SEED).isNotEmpty().isSubsetOf(keptEpisodes);
    assertThat(received).as("seed %d", SEED).containsExactlyInAnyOrderEntriesOf(kept);
    assertThat(states).as("seed %d", SEED).containsExactly(Delivery.State.DELIVERED);
    System.out.printf(
        "%d kills: %d episodes, %d alerts, each received; %d second copies%n",
        KILLS, keptEpisodes.size(), kept.size(), copies.get());
  }

  /** Takes alerts by id, and fails half of the time, before or after it has. */
  private HttpServer receiver(Map<String, String> received) throws IOException {
    Random random = new Random(SEED + 1);
    ObjectMapper json = new ObjectMapper();
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          JsonNode alert = json.readTree(exchange.getRequestBody());
          int chance = random.nextInt(4);
          if (chance != 0) {
            String before = received.put(alert.get("id").asText(), alert.get("phase").asText());
            assertThat(before).isIn(null, alert.get("phase").asText());
            copies.addAndGet(before == null ? 0 : 1);
          }
          exchange.sendResponseHeaders(chance < 2 ? 500 : 200, -1);
          exchange.close();
        });
    server.start();
    return server;
  }

  private static Process program(String url, String hook, boolean feeds) throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            AlertingProgram.class.getName(),
            url,
            hook,
            String.valueOf(feeds))
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private static void runAndKill(String url, String hook, Random random, Set<String> committed)
      throws Exception {
    Process process = program(url, hook, true);
    try (BufferedReader printed = reader(process)) {
      if (random.nextInt(4) == 0) {
        LockSupport.parkNanos(random.nextLong(START_NANOS));
      } else {
        int enough = 1 + random.nextInt(20);
        for (int i = 0; i < enough; i++) {
          note(printed.readLine(), committed);
        }
        LockSupport.parkNanos(random.nextLong(30_000_000));
      }
      process.toHandle().destroyForcibly();
      String more = printed.readLine();
      while (more != null) {
        note(more, committed);
        more = printed.readLine();
      }
    } finally {
      process.destroyForcibly().onExit().join();
    }
  }

  private static void note(@org.jspecify.annotations.Nullable String line, Set<String> committed) {
    assertThat(line).as("what the program prints").matches("\\d{19}");
    committed.add(String.valueOf(line));
  }

  private static void drain(String url, String hook) throws Exception {
    Process process = program(url, hook, false);
    try (BufferedReader printed = reader(process)) {
      assertThat(printed.readLine()).startsWith(AlertingProgram.DRAINED);
    } finally {
      process.destroyForcibly().onExit().join();
    }
  }

  private static BufferedReader reader(Process process) {
    return new BufferedReader(
        new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }
}
