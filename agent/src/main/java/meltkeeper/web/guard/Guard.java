package meltkeeper.web.guard;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HandlerType;
import io.javalin.http.SameSite;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.LongSupplier;

/**
 * Stands before every request. Lets through what is meant for this server, comes from no other
 * site, and shows the token where one is needed; tells browsers what the page may do.
 */
public final class Guard {

  /** Where a browser shows its token. */
  public static final String ENTRANCE = "/enter";

  private static final String PASS = "meltkeeper-pass";
  private static final int PASS_SECONDS = 30 * 86_400;
  private static final Set<HandlerType> READS =
      Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.OPTIONS);

  private final WebSettings settings;
  private final HostNames hosts;
  private final LongSupplier nowSeconds;

  /**
   * A guard.
   *
   * @param nowSeconds the wall clock, since 1970, for how long a browser's pass is good
   */
  public Guard(WebSettings settings, LongSupplier nowSeconds) {
    this.settings = settings;
    this.hosts = new HostNames(settings.host(), settings.names());
    this.nowSeconds = nowSeconds;
  }

  /**
   * Looks at a request.
   *
   * @throws TurnedAwayException when it may not pass
   */
  public void look(Context request) {
    harden(request);
    checkHost(request);
    boolean reads = READS.contains(request.method());
    if (!reads) {
      checkOrigin(request);
    }
    if (!isOpen(request.path())) {
      checkToken(request, reads);
    }
  }

  private static boolean isOpen(String path) {
    return path.equals(ENTRANCE) || path.startsWith("/assets/");
  }

  private void harden(Context request) {
    request.header("X-Content-Type-Options", "nosniff");
    request.header("Referrer-Policy", "same-origin");
    request.header("X-Frame-Options", "DENY");
    request.header("Cross-Origin-Opener-Policy", "same-origin");
    request.header("Cross-Origin-Resource-Policy", "same-origin");
    request.header("Permissions-Policy", "camera=(), geolocation=(), microphone=()");
    request.header(
        "Content-Security-Policy",
        "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self';"
            + " img-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'");
    request.header("Cache-Control", "no-store");
  }

  private void checkHost(Context request) {
    String host = Optional.ofNullable(request.header("Host")).orElse("");
    if (!hosts.admits(host)) {
      throw TurnedAwayException.misdirected(host);
    }
  }

  /** A browser says where a post comes from; what says nothing must not be a form. */
  private static void checkOrigin(Context request) {
    Optional<String> site = Optional.ofNullable(request.header("Sec-Fetch-Site"));
    if (site.filter(s -> !s.equals("same-origin") && !s.equals("none")).isPresent()) {
      throw TurnedAwayException.foreign(site.get());
    }
    Optional<String> origin = Optional.ofNullable(request.header("Origin"));
    if (origin.isPresent()) {
      if (!isOwn(origin.get(), String.valueOf(request.header("Host")))) {
        throw TurnedAwayException.foreign(origin.get());
      }
    } else if (site.isEmpty() && isForm(request)) {
      throw TurnedAwayException.foreign("no origin");
    }
  }

  private static boolean isForm(Context request) {
    String type =
        Optional.ofNullable(request.contentType()).orElse("").toLowerCase(Locale.ROOT).strip();
    return type.isEmpty()
        || type.startsWith("application/x-www-form-urlencoded")
        || type.startsWith("multipart/")
        || type.startsWith("text/plain");
  }

  private static boolean isOwn(String origin, String host) {
    try {
      return host.equalsIgnoreCase(String.valueOf(URI.create(origin).getRawAuthority()));
    } catch (IllegalArgumentException e) {
      return false;
    }
  }

  private void checkToken(Context request, boolean reads) {
    if (settings.token().isEmpty()) {
      if (!reads && !settings.isLoopback()) {
        throw TurnedAwayException.noToken();
      }
      return;
    }
    boolean needed = !reads || settings.tokenForReads();
    if (needed && !isKnown(request, settings.token().get())) {
      throw TurnedAwayException.unknown();
    }
  }

  private boolean isKnown(Context request, TokenHash token) {
    String told = Optional.ofNullable(request.header("Authorization")).orElse("");
    if (told.regionMatches(true, 0, "Bearer ", 0, 7)) {
      return token.matches(told.substring(7).strip());
    }
    return Optional.ofNullable(request.cookie(PASS))
        .filter(pass -> token.admits(pass, nowSeconds.getAsLong()))
        .isPresent();
  }

  /** True when whoever asks may write. */
  public boolean mayWrite(Context request) {
    return settings.token().map(token -> isKnown(request, token)).orElse(settings.isLoopback());
  }

  /** True when there is a token to be shown. */
  public boolean hasToken() {
    return settings.token().isPresent();
  }

  /** Gives a browser that shows the token a pass; false when it is another. */
  public boolean enter(Context request, String token) {
    Optional<TokenHash> kept = settings.token().filter(hash -> hash.matches(token));
    kept.ifPresent(
        hash ->
            request.cookie(
                new Cookie(
                    PASS,
                    hash.pass(nowSeconds.getAsLong() + PASS_SECONDS),
                    "/",
                    PASS_SECONDS,
                    settings.certificate().isPresent(),
                    true,
                    null,
                    SameSite.STRICT)));
    return kept.isPresent();
  }
}
