package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import meltkeeper.protocol.HotEnd;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Delivery;
import meltkeeper.store.Delivery.State;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Store;
import meltkeeper.store.Subject;
import meltkeeper.store.sql.Stores;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands about alerts as a shop types them. */
final class AlertCommandTest {

  /** 2026-03-02T08:00:00Z (GNU date). */
  private static final long MORNING = 1_772_438_400_000_000_000L;

  private static final Alert HOT =
      new Alert(
          new Episode(AlertTopic.TOO_HOT, new Subject.OfHotEnd(HotEnd.first("heron")), MORNING),
          Alert.Phase.BEGAN,
          0,
          MORNING,
          "heron is at 255 °C.");

  @TempDir private Path shop;
  private final List<String> posted = new CopyOnWriteArrayList<>();
  private HttpServer server = served();
  private volatile int answer = 200;
  private String out = "";
  private String err = "";

  private HttpServer served() {
    try {
      HttpServer made =
          HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
      made.createContext(
          "/",
          exchange -> {
            posted.add(
                new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
            exchange.sendResponseHeaders(answer, -1);
            exchange.close();
          });
      return made;
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  @BeforeEach
  void configure() throws IOException {
    server.start();
    Files.writeString(
        shop.resolve("meltkeeper.yaml"),
        """
        store: jdbc:sqlite:shop.db
        zone: Europe/Vienna
        printers:
          heron: { from: { serial: /dev/ttyUSB0 } }
        alerts:
          routes:
            phone: { webhook: http://127.0.0.1:%d/ }
        """
            .formatted(server.getAddress().getPort()));
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private Store store() {
    return Stores.open("jdbc:sqlite:" + shop.resolve("shop.db"));
  }

  private int meltkeeper(String... args) {
    StringWriter written = new StringWriter();
    StringWriter complained = new StringWriter();
    String[] all = Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--config";
    all[args.length + 1] = shop.resolve("meltkeeper.yaml").toString();
    int code = Main.run(new PrintWriter(written, true), new PrintWriter(complained, true), all);
    out = written.toString();
    err = complained.toString();
    return code;
  }

  @Test
  void list_showsWhatCalledAndHowFarItCame() {
    assertThat(meltkeeper("alert", "list")).isZero();
    assertThat(out).startsWith("There was no alert yet.");
    try (Store store = store()) {
      store.outbox().post(List.of(new Posting(HOT, List.of("phone"))));
      store
          .outbox()
          .note(new Delivery(HOT.id(), "phone", State.DEAD, 100, MORNING, "it answered 500"));
    }
    assertThat(meltkeeper("alert", "list")).as(() -> err).isZero();
    assertThat(out)
        .contains(HOT.id(), "2026-03-02 09:00", "too-hot", "phone dead (it answered 500)");
    assertThat(meltkeeper("alert", "list", "--json")).isZero();
    assertThat(out)
        .contains(
            "\"id\":\"" + HOT.id() + "\"",
            "\"printer\":\"heron\"",
            "\"began\":\"2026-03-02T08:00:00Z\"",
            "{\"route\":\"phone\",\"state\":\"dead\",\"attempts\":100,\"detail\":\"it answered 500\"}");
    assertThat(meltkeeper("alert", "list", "--most", "0")).isEqualTo(2);
  }

  @Test
  void acknowledge_byTheFirstCharacters_isKept() {
    try (Store store = store()) {
      store.outbox().post(List.of(new Posting(HOT, List.of("phone"))));
    }
    assertThat(meltkeeper("alert", "acknowledge", HOT.id().substring(0, 4), "--by", "Mira"))
        .as(() -> err)
        .isZero();
    assertThat(out).contains(HOT.id() + " is acknowledged by Mira.", "deadly to birds");
    assertThat(meltkeeper("alert", "list")).isZero();
    assertThat(out).contains("Mira");
  }

  @Test
  void acknowledge_ofNothing_isRefused() {
    assertThat(meltkeeper("alert", "acknowledge", "ffff")).isEqualTo(2);
    assertThat(err)
        .contains("id: found \"ffff\"; allowed: the id of an alert", "alert list shows them");
  }

  @Test
  void test_sendsASampleThatSaysSo() {
    assertThat(meltkeeper("alert", "test", "phone")).as(() -> err).isZero();
    assertThat(out).startsWith("A sample was delivered on the route phone.");
    assertThat(posted.get(0)).contains("\"sample\":true", "Nothing is the matter");
    try (Store store = store()) {
      assertThat(store.outbox().latest(1)).isEmpty();
    }
  }

  @Test
  void test_ofARouteThatFails_saysWhy() {
    answer = 500;
    assertThat(meltkeeper("alert", "test", "phone")).isEqualTo(1);
    assertThat(err).contains("route phone: it answered 500");
  }

  @Test
  void test_ofAnUnknownRoute_namesTheKnown() {
    assertThat(meltkeeper("alert", "test", "phne")).isEqualTo(2);
    assertThat(err).contains("found \"phne\"; allowed: one of phone");
  }
}
