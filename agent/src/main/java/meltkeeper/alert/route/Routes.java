package meltkeeper.alert.route;

import java.time.Duration;

/**
 * Makes routes out of settings.
 *
 * @param remind how long until an episode is told again
 * @param publishing makes connections to brokers
 * @param sending to printers on a line of their own
 */
public record Routes(Words words, Duration remind, Publishing.Maker publishing, Sending sending) {

  /** An alert goes on at the other side for so long beyond the next reminder. */
  private static final Duration LASTING = Duration.ofHours(24);

  private static final Duration ACTION_TIMEOUT = Duration.ofSeconds(10);

  /** The route of these settings. */
  public Route of(RouteSettings settings) {
    RouteSettings.Way way = settings.way();
    if (way instanceof RouteSettings.Mqtt mqtt) {
      return new MqttRoute(mqtt.prefix(), publishing.at(mqtt.broker(), settings.timeout()));
    }
    if (way instanceof RouteSettings.Webhook webhook) {
      return new WebhookRoute(webhook, settings.timeout());
    }
    if (way instanceof RouteSettings.Mail mail) {
      return new MailRoute(mail, settings.timeout(), words);
    }
    if (way instanceof RouteSettings.Alertmanager alertmanager) {
      return new AlertmanagerRoute(alertmanager, settings.timeout(), remind.plus(LASTING));
    }
    if (way instanceof RouteSettings.Command command) {
      return new CommandRoute(command, settings.timeout());
    }
    throw new IllegalArgumentException("no route goes by " + way);
  }

  /** The route of a jam action. */
  public Route of(JamAction action) {
    return new ActionRoute(
        action,
        action.message().map(message -> publishing.at(message.broker(), ACTION_TIMEOUT)),
        sending);
  }
}
