package meltkeeper.alert.route;

import static meltkeeper.alert.Calls.message;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CopyOnWriteArrayList;
import meltkeeper.alert.Calls;
import meltkeeper.alert.route.RouteSettings.Encryption;
import meltkeeper.store.AlertTopic;
import meltkeeper.testing.Certificates;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.subethamail.smtp.server.SMTPServer;

/** Mail to a real SMTP server that speaks only after STARTTLS, or does not offer it. */
final class MailEncryptionTest {

  @TempDir private Path folder;
  private final List<String> received = new CopyOnWriteArrayList<>();

  private Certificates certificates(String name, String folderName) throws Exception {
    return new Certificates(Files.createDirectory(folder.resolve(folderName))).issue(name);
  }

  /** A server that takes mail only over an encrypted connection. */
  private SMTPServer encrypted(Certificates certificates) throws Exception {
    SMTPServer server =
        plain().startTlsSocketFactory(certificates.server()).enableTLS().requireTLS().build();
    server.start();
    return server;
  }

  private SMTPServer.Builder plain() {
    return SMTPServer.port(0)
        .bindAddress(InetAddress.getLoopbackAddress())
        .messageHandler(
            (context, from, to, data) ->
                received.add(to + " " + new String(data, StandardCharsets.UTF_8)));
  }

  private static Route route(SMTPServer server, Optional<Path> authority) {
    return new MailRoute(
        new RouteSettings.Mail(
            "127.0.0.1",
            server.getPortAllocated(),
            Encryption.STARTTLS,
            "keeper@shop.example",
            List.of("owner@shop.example"),
            Optional.empty(),
            Optional.empty(),
            authority),
        Duration.ofSeconds(10),
        Calls.WORDS);
  }

  private static UndeliveredException failure(Route route) {
    return catchThrowableOfType(
        UndeliveredException.class, () -> route.deliver(message(AlertTopic.TOO_HOT)));
  }

  @Test
  void server_vouchedForByTheAuthorityFile_takesTheMailEncrypted() throws Exception {
    Certificates certificates = certificates("IP:127.0.0.1", "ours");
    SMTPServer server = encrypted(certificates);
    try {
      route(server, Optional.of(certificates.authority())).deliver(message(AlertTopic.TOO_HOT));
    } finally {
      server.stop();
    }
    assertThat(received)
        .singleElement()
        .asString()
        .startsWith("owner@shop.example ")
        .contains("Subject: heron: too hot");
  }

  @Test
  void server_ofAnotherAuthority_getsNoMail() throws Exception {
    Certificates others = certificates("IP:127.0.0.1", "others");
    SMTPServer server = encrypted(certificates("IP:127.0.0.1", "theirs"));
    try {
      assertThat(failure(route(server, Optional.of(others.authority()))))
          .hasMessageContaining("trust anchors");
      assertThat(failure(route(server, Optional.empty())))
          .hasMessageContaining("certification path");
    } finally {
      server.stop();
    }
    assertThat(received).isEmpty();
  }

  @Test
  void server_withAnothersName_getsNoMail() throws Exception {
    Certificates certificates = certificates("DNS:mail.invalid", "elsewhere");
    SMTPServer server = encrypted(certificates);
    try {
      assertThat(failure(route(server, Optional.of(certificates.authority()))))
          .hasMessageContaining("127.0.0.1");
    } finally {
      server.stop();
    }
    assertThat(received).isEmpty();
  }

  @Test
  void server_thatOffersNoStarttls_getsNoMailInTheClear() throws Exception {
    Certificates certificates = certificates("IP:127.0.0.1", "unused");
    SMTPServer server = plain().build();
    server.start();
    try {
      UndeliveredException failure = failure(route(server, Optional.of(certificates.authority())));
      assertThat(failure).hasMessageContaining("STARTTLS");
      assertThat(failure.isFinal()).isFalse();
    } finally {
      server.stop();
    }
    assertThat(received).isEmpty();
  }
}
