package meltkeeper.web.api;

import java.util.List;
import meltkeeper.protocol.Fault;

/**
 * What went wrong with a request, as of RFC 9457.
 *
 * @param type {@code about:blank}: the status says what sort of trouble it is
 * @param title of the status
 * @param detail in words, for a person
 * @param faults each thing that is wrong with what was sent
 */
public record Problem(String type, String title, int status, String detail, List<Fault> faults) {

  /** Its media type. */
  public static final String CONTENT_TYPE = "application/problem+json";

  public Problem {
    faults = List.copyOf(faults);
  }

  /** A problem in words. */
  public static Problem of(int status, String detail) {
    return new Problem("about:blank", title(status), status, detail, List.of());
  }

  /** What was sent is wrong. */
  static Problem of(int status, List<Fault> faults) {
    return new Problem(
        "about:blank",
        title(status),
        status,
        String.join("\n", faults.stream().map(Fault::toString).toList()),
        faults);
  }

  private static String title(int status) {
    return switch (status) {
      case 400 -> "Bad Request";
      case 401 -> "Unauthorized";
      case 403 -> "Forbidden";
      case 404 -> "Not Found";
      case 405 -> "Method Not Allowed";
      case 413 -> "Content Too Large";
      case 421 -> "Misdirected Request";
      case 422 -> "Unprocessable Content";
      case 503 -> "Service Unavailable";
      default -> status >= 500 ? "Internal Server Error" : "Request Refused";
    };
  }
}
