package meltkeeper.alert.route;

import java.time.Duration;

/** Posts each alert to a web server. */
final class WebhookRoute implements Route {

  private final RouteSettings.Webhook way;
  private final Duration timeout;

  WebhookRoute(RouteSettings.Webhook way, Duration timeout) {
    this.way = way;
    this.timeout = timeout;
  }

  @Override
  public void deliver(Message message) throws UndeliveredException, InterruptedException {
    HttpPost.to(way.url(), way.headers(), way.tokenFile(), way.caFile(), timeout)
        .json(
            way.body()
                .map(body -> body.filled(message))
                .orElseGet(() -> AlertJson.of(message).toString()));
  }
}
