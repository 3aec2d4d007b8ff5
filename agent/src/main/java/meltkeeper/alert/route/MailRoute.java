package meltkeeper.alert.route;

import jakarta.mail.Message.RecipientType;
import jakarta.mail.MessagingException;
import jakarta.mail.SendFailedException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeMessage;
import java.time.Duration;
import java.util.Date;
import java.util.List;
import java.util.Properties;
import java.util.stream.Collectors;
import meltkeeper.part.Moments;
import meltkeeper.store.Alert;

/**
 * Sends each alert as plain text over SMTP. The alert's id makes the mail's own, so that a second
 * copy is known as one; mails of one episode refer to the first. Several alerts make one mail that
 * tells the id of each.
 */
final class MailRoute implements Route {

  private final RouteSettings.Mail way;
  private final Duration timeout;
  private final Words words;

  MailRoute(RouteSettings.Mail way, Duration timeout, Words words) {
    this.way = way;
    this.timeout = timeout;
    this.words = words;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException {
    deliver(List.of(message));
  }

  @Override
  public boolean joins() {
    return true;
  }

  @Override
  public void deliver(List<Message> messages) throws UndeliveredException {
    try {
      Session session = Session.getInstance(properties());
      MimeMessage mail = mail(session, messages);
      try (Transport transport = session.getTransport("smtp")) {
        if (way.username().isPresent()) {
          transport.connect(
              way.username().get(),
              way.passwordFile().isPresent() ? Secrets.in(way.passwordFile().get()) : "");
        } else {
          transport.connect();
        }
        transport.sendMessage(mail, mail.getAllRecipients());
      }
    } catch (SendFailedException e) {
      throw UndeliveredException.forNow(
          "a recipient was refused: " + UndeliveredException.words(e));
    } catch (MessagingException e) {
      throw UndeliveredException.forNow(UndeliveredException.words(e));
    }
  }

  private Properties properties() throws UndeliveredException {
    Properties properties = new Properties();
    String millis = String.valueOf(timeout.toMillis());
    properties.setProperty("mail.smtp.host", way.host());
    properties.setProperty("mail.smtp.port", String.valueOf(way.port()));
    properties.setProperty("mail.smtp.connectiontimeout", millis);
    properties.setProperty("mail.smtp.timeout", millis);
    properties.setProperty("mail.smtp.writetimeout", millis);
    properties.setProperty("mail.smtp.auth", String.valueOf(way.username().isPresent()));
    properties.setProperty("mail.smtp.ssl.checkserveridentity", "true");
    switch (way.encryption()) {
      case STARTTLS -> {
        properties.setProperty("mail.smtp.starttls.enable", "true");
        properties.setProperty("mail.smtp.starttls.required", "true");
      }
      case TLS -> properties.setProperty("mail.smtp.ssl.enable", "true");
      case NONE -> properties.setProperty("mail.smtp.starttls.enable", "false");
    }
    if (way.caFile().isPresent()) {
      properties.put("mail.smtp.ssl.socketFactory", Secrets.trust(way.caFile()).getSocketFactory());
    }
    return properties;
  }

  private MimeMessage mail(Session session, List<Message> messages) throws MessagingException {
    String host = way.from().substring(way.from().indexOf('@') + 1);
    Alert first = messages.get(0).alert();
    String id = messages.size() == 1 ? first.id() : first.id() + "." + messages.size();
    MimeMessage mail = new WithId(session, mailId(id, host));
    mail.setFrom(new InternetAddress(way.from()));
    for (String to : way.to()) {
      mail.addRecipient(RecipientType.TO, new InternetAddress(to));
    }
    mail.setSubject(Words.title(messages), "UTF-8");
    mail.setSentDate(Date.from(Moments.instant(first.atNanos())));
    mail.setHeader(
        "References",
        messages.stream()
            .map(message -> mailId(message.alert().episode().id(), host))
            .distinct()
            .collect(Collectors.joining(" ")));
    // RFC 3834: no automatic answers, please.
    mail.setHeader("Auto-Submitted", "auto-generated");
    mail.setText(words.letter(messages), "UTF-8");
    return mail;
  }

  private static String mailId(String id, String host) {
    return "<" + id + ".meltkeeper@" + host + ">";
  }

  /** A mail that keeps the id that it is given. */
  private static final class WithId extends MimeMessage {
    private final String id;

    WithId(Session session, String id) {
      super(session);
      this.id = id;
    }

    @Override
    protected void updateMessageID() throws MessagingException {
      setHeader("Message-ID", id);
    }
  }
}
