package meltkeeper.web.api;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import meltkeeper.desk.RefusedException;
import meltkeeper.protocol.Fault;

/**
 * Which stretch of a list is asked for.
 *
 * @param most how many at once, 1 to {@value #MOST}
 * @param after the id of the last one that was had before
 */
record Paging(int most, Optional<String> after) {

  static final int USUAL = 100;
  static final int MOST = 1_000;

  /**
   * Of the query's {@code most} and {@code after}.
   *
   * @throws RefusedException for a number that is none
   */
  static Paging of(Context request) {
    String most = Optional.ofNullable(request.queryParam("most")).orElse("" + USUAL);
    if (!most.matches("[0-9]{1,4}")
        || Integer.parseInt(most) < 1
        || Integer.parseInt(most) > MOST) {
      throw new RefusedException(List.of(Fault.of("most", most, "1 to " + MOST)));
    }
    return new Paging(Integer.parseInt(most), Optional.ofNullable(request.queryParam("after")));
  }

  /** The stretch, with a link to the next one where there is more (RFC 8288). */
  <T> List<T> page(Context request, List<T> all, Function<T, String> id) {
    int from = 0;
    if (after.isPresent()) {
      while (from < all.size() && !id.apply(all.get(from)).equals(after.get())) {
        from++;
      }
      if (from == all.size()) {
        throw new RefusedException(
            List.of(Fault.of("after", after.get(), "the id of one in the list")));
      }
      from++;
    }
    int until = Math.min(all.size(), from + most);
    if (until < all.size()) {
      request.header("Link", "<" + next(request, id.apply(all.get(until - 1))) + ">; rel=\"next\"");
    }
    return all.subList(from, until);
  }

  private String next(Context request, String last) {
    StringBuilder link = new StringBuilder(request.path()).append("?most=").append(most);
    request
        .queryParamMap()
        .forEach(
            (name, values) -> {
              if (!name.equals("most") && !name.equals("after")) {
                values.forEach(
                    v -> link.append('&').append(encoded(name)).append('=').append(encoded(v)));
              }
            });
    return link.append("&after=").append(encoded(last)).toString();
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }
}
