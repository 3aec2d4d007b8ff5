package meltkeeper.endure;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import meltkeeper.testing.RealParts;
import meltkeeper.testing.RunningProgram;

/**
 * The network between agent and broker goes down without a word, and comes back. Both live in a
 * network namespace of its own, whose only interface is switched off: sockets stay open, and
 * nothing comes through.
 */
public final class NetworkSplit implements Ordeal {

  private static final int MOST = 20;
  private static final int PORT = 1883;
  private static final int SOME = 20;
  private static final Ramp RAMP = new Ramp(1e-4);

  @Override
  public String fault() {
    return "network split between agent and broker";
  }

  @Override
  public Tried endure(int times, long seed, Path folder) throws Exception {
    int tries = Math.min(times, MOST);
    Random random = new Random(seed);
    List<String> hold = new ArrayList<>(Namespace.command(List.of("--net"), "ip link set lo up"));
    hold.addAll(List.of("sleep", "1000000"));
    Process holder = new ProcessBuilder(hold).start();
    try {
      List<String> inside = Namespace.of(holder.pid());
      RampShop.until(
          "the network is there",
          () -> code(inside, "ip", "address", "show", "up", "dev", "lo") == 0);
      try (RunningProgram broker = broker(folder, inside);
          AgentProcess agent = agent(folder, inside)) {
        agent.awaitReady();
        RampShop.until("it has connected", () -> agent.logged().contains("connected to"));
        long lost = 0;
        long doubled = 0;
        long next = 0;
        for (int i = 0; i < tries; i++) {
          next = publish(folder, inside, next);
          credited(folder, next);
          code(inside, "ip", "link", "set", "lo", "down");
          LockSupport.parkNanos(random.nextLong(TimeUnit.SECONDS.toNanos(8)));
          next += random.nextInt(5_000);
          code(inside, "ip", "link", "set", "lo", "up");
          next = publish(folder, inside, next);
          Books books = credited(folder, next);
          lost += books.lostNanos();
          doubled += books.doubledNanos();
        }
        if (!broker.isRunning()) {
          throw new AssertionError("the broker ended");
        }
        return new Tried(
            fault(), tries, lost, doubled, "`source_up` 0 when it lasts; hours bridged");
      }
    } finally {
      holder.destroyForcibly().onExit().join();
    }
  }

  private static RunningProgram broker(Path folder, List<String> inside) throws IOException {
    Path configuration = folder.resolve("mosquitto.conf");
    Files.write(
        configuration,
        List.of("listener " + PORT + " 127.0.0.1", "allow_anonymous true", "user root"));
    List<String> command = new ArrayList<>(inside);
    command.addAll(List.of(RealParts.find("mosquitto").toString(), "-c", configuration.toString()));
    return RunningProgram.start(folder.resolve("mosquitto.log"), command);
  }

  private static AgentProcess agent(Path folder, List<String> inside) throws IOException {
    Path config = folder.resolve("meltkeeper.yaml");
    Files.writeString(config, RampShop.configuration("tcp://127.0.0.1:" + PORT));
    Files.createDirectories(folder.resolve("state"));
    return AgentProcess.start(Start.USUAL, inside, config, folder.resolve("agent.log"));
  }

  private static long publish(Path folder, List<String> inside, long first) throws Exception {
    StringBuilder lines = new StringBuilder();
    for (long number = first; number < first + SOME; number++) {
      lines.append(RAMP.payload(number)).append('\n');
    }
    Path file = folder.resolve("readings");
    Files.writeString(file, lines, StandardCharsets.UTF_8);
    List<String> command = new ArrayList<>(inside);
    command.addAll(
        List.of(
            RealParts.find("mosquitto_pub").toString(),
            "-h",
            "127.0.0.1",
            "-p",
            Integer.toString(PORT),
            "-q",
            "1",
            "-l",
            "-t",
            RampShop.TOPIC));
    RampShop.until(
        "the printer has published",
        () ->
            new ProcessBuilder(command)
                    .redirectInput(file.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("published.log").toFile())
                    .start()
                    .waitFor()
                == 0);
    return first + SOME;
  }

  private static Books credited(Path folder, long next) {
    Path store = folder.resolve("state").resolve("shop.db");
    RampShop.until(
        "reading " + next + " is credited",
        () -> Books.of(store, RAMP).untilNanos() == Ramp.nanos(next - 1));
    return Books.of(store, RAMP);
  }

  private static int code(List<String> inside, String... words) throws Exception {
    List<String> command = new ArrayList<>(inside);
    command.addAll(List.of(words));
    return Namespace.code(command);
  }
}
