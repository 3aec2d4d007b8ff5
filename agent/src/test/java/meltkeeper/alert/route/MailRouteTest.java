package meltkeeper.alert.route;

import static meltkeeper.alert.Calls.message;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.icegreen.greenmail.util.GreenMail;
import com.icegreen.greenmail.util.ServerSetup;
import com.icegreen.greenmail.util.ServerSetupTest;
import jakarta.mail.internet.MimeMessage;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import meltkeeper.alert.Calls;
import meltkeeper.alert.route.RouteSettings.Encryption;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Mail, in a conversation with a real SMTP server. */
final class MailRouteTest {

  @TempDir private Path folder;
  private final GreenMail server = new GreenMail(ServerSetupTest.SMTP.dynamicPort());

  @BeforeEach
  void start() {
    server.start();
    server.setUser("keeper", "plover");
  }

  @AfterEach
  void stop() {
    server.stop();
  }

  private Route route(int port, Encryption encryption, Optional<Path> password) {
    return new MailRoute(
        new RouteSettings.Mail(
            "127.0.0.1",
            port,
            encryption,
            "keeper@shop.example",
            List.of("owner@shop.example", "night@shop.example"),
            password.map(file -> "keeper"),
            password,
            Optional.empty()),
        Duration.ofMillis(1500),
        Calls.WORDS);
  }

  @Test
  void mail_readsWellOnAPhone_andIsKnownAgainByItsId() throws Exception {
    Path password = Files.writeString(folder.resolve("password"), "plover\n");
    Message message = message(AlertTopic.TOO_HOT);
    route(server.getSmtp().getPort(), Encryption.NONE, Optional.of(password)).deliver(message);

    MimeMessage[] mails = server.getReceivedMessages();
    assertThat(mails).hasSize(2);
    MimeMessage mail = mails[0];
    assertThat(mail.getSubject()).isEqualTo("heron: too hot");
    assertThat(mail.getMessageID())
        .isEqualTo("<" + message.alert().id() + ".meltkeeper@shop.example>");
    assertThat(mail.getHeader("Auto-Submitted")).containsExactly("auto-generated");
    assertThat(mail.getContentType()).startsWith("text/plain; charset=UTF-8");
    assertThat(mail.getContent().toString().replace("\r\n", "\n") + "\n")
        .isEqualTo(
            """
            heron needs "you".

            2026-03-02 08:00

            ! PTFE must stay below 260 °C: its fumes are harmful to people and deadly to birds. Air the room and keep birds out.
            ! Hot metal burns: let it cool, or hold it with tools.

            No more reminders of this: meltkeeper alert acknowledge %s
            """
                .formatted(message.alert().id()));
  }

  @Test
  void allClear_refersToTheSameEpisode_andNeedsNoCaution() throws Exception {
    Route route = route(server.getSmtp().getPort(), Encryption.NONE, Optional.empty());
    route.deliver(message(AlertTopic.TOO_HOT));
    route.deliver(new Message(Calls.alert(AlertTopic.TOO_HOT, Alert.Phase.ALL_CLEAR), false));

    MimeMessage began = received("heron: too hot");
    MimeMessage clear = received("All clear: heron: too hot");
    assertThat(clear.getHeader("References")).isEqualTo(began.getHeader("References"));
    assertThat(clear.getMessageID()).isNotEqualTo(began.getMessageID());
    assertThat(clear.getContent().toString()).doesNotContain("!");
  }

  @Test
  void severalAlerts_makeOneMail_thatTellsEachWithItsId() throws Exception {
    Message due = message(AlertTopic.PART_DUE);
    Message overdue = message(AlertTopic.PART_OVERDUE);
    Route route = route(server.getSmtp().getPort(), Encryption.NONE, Optional.empty());
    assertThat(route.joins()).isTrue();
    route.deliver(List.of(due, overdue));

    MimeMessage mail = received("heron: replacement is due soon, and 1 more");
    assertThat(mail.getMessageID())
        .isEqualTo("<" + due.alert().id() + ".2.meltkeeper@shop.example>");
    assertThat(mail.getHeader("References", null).split("\\s+")).hasSize(2);
    assertThat(mail.getContent().toString().replace("\r\n", "\n") + "\n")
        .isEqualTo(
            """
            heron: replacement is due soon
            heron needs "you".
            2026-03-02 08:00, %s

            heron: replacement is overdue
            heron needs "you".
            2026-03-02 08:00, %s

            ! Hot metal burns: let it cool, or hold it with tools.
            ! Wear eye protection for scraping and compressed air.

            No more reminders of one: meltkeeper alert acknowledge, and its id
            """
                .formatted(due.alert().id(), overdue.alert().id()));
  }

  private MimeMessage received(String subject) throws Exception {
    for (MimeMessage mail : server.getReceivedMessages()) {
      if (mail.getSubject().equals(subject)) {
        return mail;
      }
    }
    throw new AssertionError("no mail on " + subject);
  }

  @Test
  void serverThatNobodyVouchesFor_getsNoMail() {
    GreenMail encrypted =
        new GreenMail(new ServerSetup(0, "127.0.0.1", ServerSetup.PROTOCOL_SMTPS));
    encrypted.start();
    try {
      UndeliveredException failure =
          catchThrowableOfType(
              UndeliveredException.class,
              () ->
                  route(encrypted.getSmtps().getPort(), Encryption.TLS, Optional.empty())
                      .deliver(message(AlertTopic.TOO_HOT)));

      assertThat(failure).hasMessageContaining("certification path");
    } finally {
      encrypted.stop();
    }
  }

  @Test
  void serverThatAcceptsAndNeverSpeaks_failsInBoundedTime() throws Exception {
    try (ServerSocket mute = new ServerSocket(0, 5, InetAddress.getLoopbackAddress())) {
      UndeliveredException failure =
          catchThrowableOfType(
              UndeliveredException.class,
              () ->
                  route(mute.getLocalPort(), Encryption.NONE, Optional.empty())
                      .deliver(message(AlertTopic.TOO_HOT)));

      assertThat(failure.isFinal()).isFalse();
    }
  }
}
