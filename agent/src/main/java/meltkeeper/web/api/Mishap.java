package meltkeeper.web.api;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import meltkeeper.desk.RefusedException;
import meltkeeper.store.StoreException;
import meltkeeper.web.guard.TurnedAwayException;
import org.eclipse.jetty.http.HttpException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Makes a problem, in words, of what went wrong while a request was answered. */
public final class Mishap {

  private static final Logger LOG = LoggerFactory.getLogger(Mishap.class);

  private Mishap() {}

  /** The problem that an exception is. One that is nobody's fault but ours is logged. */
  public static Problem problem(Context request, Exception cause) {
    return known(cause)
        .or(() -> ofTheBody(cause))
        .orElseGet(
            () -> {
              LOG.error("{} {} failed", request.method(), request.path(), cause);
              return Problem.of(500, "A bug in Meltkeeper: the agent's log says more");
            });
  }

  private static Optional<Problem> known(Exception cause) {
    if (cause instanceof RefusedException refused) {
      return Optional.of(Problem.of(422, refused.faults()));
    }
    if (cause instanceof UnknownException unknown) {
      return Optional.of(Problem.of(404, unknown.faults()));
    }
    if (cause instanceof TurnedAwayException away) {
      return Optional.of(Problem.of(away.status(), String.valueOf(away.getMessage())));
    }
    if (cause instanceof HttpResponseException response) {
      return Optional.of(
          response.getStatus() == 413
              ? Problem.of(413, "The body: found more than 1 MiB; allowed: at most that")
              : Problem.of(response.getStatus(), String.valueOf(response.getMessage())));
    }
    return cause instanceof StoreException
        ? Optional.of(Problem.of(503, "The store: " + cause.getMessage() + "; try again"))
        : Optional.empty();
  }

  /** A body that is too long, malformed, or ends too soon, however deep the server hides it. */
  private static Optional<Problem> ofTheBody(Exception cause) {
    if (chain(cause).anyMatch(Mishap::tellsOfALimit)) {
      return Optional.of(Problem.of(413, LimitedStream.TOO_LONG));
    }
    return chain(cause)
            .anyMatch(
                one ->
                    one instanceof HttpException
                        || one instanceof IOException
                        || one instanceof TimeoutException)
        ? Optional.of(
            Problem.of(400, "The body: found one that is broken off, too slow or malformed"))
        : Optional.empty();
  }

  private static boolean tellsOfALimit(Throwable one) {
    return one instanceof LimitedStream.TooLongException
        || String.valueOf(one.getMessage()).startsWith("max ");
  }

  private static Stream<Throwable> chain(Throwable cause) {
    return Stream.iterate(cause, Objects::nonNull, Throwable::getCause);
  }
}
