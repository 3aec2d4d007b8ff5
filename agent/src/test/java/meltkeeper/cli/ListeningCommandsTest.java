package meltkeeper.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import meltkeeper.testing.Mosquitto;
import meltkeeper.testing.Publisher;
import meltkeeper.testing.RealParts;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code listen} and {@code doctor} at a real broker. */
class ListeningCommandsTest {

  private static final String STATUS =
      "{\"hotend\":{\"now\":214.9,\"set\":215},\"feed\":{\"asked\":12.5}}";

  @TempDir private Path shop;
  private String out = "";
  private String err = "";

  private int meltkeeper(String... args) {
    StringWriter written = new StringWriter();
    StringWriter complained = new StringWriter();
    String[] all = java.util.Arrays.copyOf(args, args.length + 2);
    all[args.length] = "--config";
    all[args.length + 1] = shop.resolve("meltkeeper.yaml").toString();
    int code = Main.run(new PrintWriter(written, true), new PrintWriter(complained, true), all);
    out = written.toString();
    err = complained.toString();
    return code;
  }

  private void configure(int port, String more) throws IOException {
    Files.writeString(
        shop.resolve("meltkeeper.yaml"),
        "brokers: { shop: { url: \"tcp://127.0.0.1:" + port + "\" } }\n" + more);
  }

  @Test
  void listen_showsWhatIsThere_andProposesWhatCheckAccepts() throws Exception {
    try (Mosquitto broker = Mosquitto.in(Files.createDirectory(shop.resolve("broker"))).start();
        Publisher printer = new Publisher(broker.url())) {
      printer.publish("plant/heron/status", STATUS, true);
      printer.publish("house/door", "\u001b[2Jopen\u009b1m", true);
      configure(broker.port(), "printers: {}\n");

      assertThat(meltkeeper("listen", "--broker", "shop", "--for", "3s")).as(() -> err).isZero();

      assertThat(out).contains("plant/heron/status  " + STATUS).contains("# Proposed");
      assertThat(out).contains("house/door   [2Jopen 1m");
      configure(broker.port(), out.substring(out.indexOf("mappings:")));
      assertThat(meltkeeper("check")).as(() -> err).isZero();
      assertThat(out).contains("1 printers");
    }
  }

  @Test
  void listen_whereNobodyIs_failsInWords() throws Exception {
    configure(RealParts.freePort(), "printers: {}\n");
    assertThat(meltkeeper("listen", "--broker", "shop", "--for", "1s")).isEqualTo(1);
    assertThat(err).contains("broker shop").contains("refused");
    assertThat(meltkeeper("listen", "--broker", "desk")).isEqualTo(2);
    assertThat(err).contains("--broker").contains("[shop]");
  }

  @Test
  void doctor_triesABroker_thatNoPrinterIsReadFromYet() throws Exception {
    try (Mosquitto broker = Mosquitto.in(Files.createDirectory(shop.resolve("broker"))).start()) {
      configure(broker.port(), "printers: {}\n");
      meltkeeper("doctor", "--for", "2");
      assertThat(out).contains("well  broker shop").contains("bad   printers: none is listed");
    }
  }

  @Test
  void doctor_atARealBroker_tellsWhoIsHeardAndWhoIsNot() throws Exception {
    String rest =
        """
        mappings:
          status:
            - topic: plant/{printer}/status
              read: { hot-end-temperature: /hotend/now, filament-commanded: /feed/asked }
        printers:
          heron: { from: { broker: shop, mapping: status } }
          ibis: { from: { broker: shop, mapping: status } }
        """;
    try (Mosquitto broker = Mosquitto.in(Files.createDirectory(shop.resolve("broker"))).start();
        Publisher printer = new Publisher(broker.url())) {
      printer.publish("plant/heron/status", STATUS, true);
      configure(broker.port(), rest);

      assertThat(meltkeeper("doctor", "--for", "3")).as(() -> out + err).isZero();

      assertThat(out)
          .contains("well  broker shop")
          .contains("well  printer heron: heard")
          .contains("the jam watch will be blind")
          .contains("weak  printer ibis: nothing was heard");
    }
    assertThat(meltkeeper("doctor", "--for", "1")).isEqualTo(1);
    assertThat(out).contains("bad   broker shop").contains("mend: see that it runs");
  }
}
