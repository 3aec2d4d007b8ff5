package meltkeeper.alert.route;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Requests to one address.
 *
 * @param timeout for the whole exchange, the last byte of the answer included
 */
record HttpPost(
    URI url,
    Map<String, String> headers,
    Optional<Path> tokenFile,
    Duration timeout,
    HttpClient client) {

  private static final int OK = 200;
  private static final int MULTIPLE_CHOICES = 300;
  private static final int BAD_REQUEST = 400;
  private static final int SERVER_ERROR = 500;
  private static final int REQUEST_TIMEOUT = 408;
  private static final int TOO_MANY_REQUESTS = 429;
  private static final int UNAUTHORIZED = 401;
  private static final int FORBIDDEN = 403;
  private static final int NOT_FOUND = 404;

  static HttpPost to(
      URI url,
      Map<String, String> headers,
      Optional<Path> tokenFile,
      Optional<Path> caFile,
      Duration timeout)
      throws UndeliveredException {
    HttpClient.Builder builder =
        HttpClient.newBuilder()
            .connectTimeout(timeout)
            .version(HttpClient.Version.HTTP_1_1)
            .followRedirects(HttpClient.Redirect.NEVER);
    if (caFile.isPresent()) {
      builder.sslContext(Secrets.trust(caFile));
    }
    return new HttpPost(url, headers, tokenFile, timeout, builder.build());
  }

  /** Posts JSON. An answer from 200 to 299 says that it was taken. */
  void json(String body) throws UndeliveredException, InterruptedException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(url)
            .timeout(timeout)
            .header("Content-Type", "application/json")
            .POST(HttpRequest.BodyPublishers.ofString(body));
    headers.forEach(request::setHeader);
    if (tokenFile.isPresent()) {
      request.setHeader("Authorization", "Bearer " + Secrets.in(tokenFile.get()));
    }
    check(exchange(request.build()));
  }

  private int exchange(HttpRequest request) throws UndeliveredException, InterruptedException {
    CompletableFuture<HttpResponse<Void>> answer =
        client.sendAsync(request, HttpResponse.BodyHandlers.discarding());
    try {
      return answer.get(timeout.toMillis(), TimeUnit.MILLISECONDS).statusCode();
    } catch (TimeoutException e) {
      throw UndeliveredException.forNow("no answer within " + timeout.toMillis() + " ms");
    } catch (ExecutionException e) {
      throw UndeliveredException.forNow(UndeliveredException.words(e));
    } finally {
      answer.cancel(true);
    }
  }

  /** What the configuration may yet mend is tried again; what the body is to blame for is not. */
  private static void check(int status) throws UndeliveredException {
    if (status >= OK && status < MULTIPLE_CHOICES) {
      return;
    }
    String reason = "it answered " + status;
    boolean mayPass =
        status < BAD_REQUEST
            || status >= SERVER_ERROR
            || status == REQUEST_TIMEOUT
            || status == TOO_MANY_REQUESTS
            || status == UNAUTHORIZED
            || status == FORBIDDEN
            || status == NOT_FOUND;
    throw mayPass ? UndeliveredException.forNow(reason) : UndeliveredException.forGood(reason);
  }
}
