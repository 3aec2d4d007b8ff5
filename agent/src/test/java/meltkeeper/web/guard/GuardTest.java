package meltkeeper.web.guard;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.util.Optional;
import java.util.Set;
import meltkeeper.web.ServedShop;
import org.junit.jupiter.api.Test;

/** Who may read, and who may write. */
final class GuardTest {

  private static final String TOKEN = "a-token-for-this-test-alone";
  private static final String LINER = "{\"kind\":\"liner\"}";

  private static WebSettings settings(String host, Optional<TokenHash> token, boolean forReads) {
    return new WebSettings(host, 0, Set.of(), token, forReads, Optional.empty());
  }

  private static WebSettings guarded(boolean forReads) {
    return settings("127.0.0.1", Optional.of(TokenHash.of(TOKEN)), forReads);
  }

  @Test
  void loopback_withoutToken_mayWrite() {
    try (ServedShop shop = new ServedShop()) {
      assertThat(shop.post("/api/v1/parts", LINER).statusCode()).isEqualTo(200);
    }
  }

  @Test
  void otherAddress_withoutToken_mayOnlyRead() {
    try (ServedShop shop = new ServedShop(settings("0.0.0.0", Optional.empty(), false))) {
      HttpResponse<String> write = shop.post("/api/v1/parts", LINER);

      assertThat(shop.get("/api/v1/parts").statusCode()).isEqualTo(200);
      assertThat(write.statusCode()).isEqualTo(403);
      assertThat(write.body()).contains("meltkeeper token FILE", "http.token-file");
      assertThat(shop.bench.store.parts()).isEmpty();
    }
  }

  @Test
  void write_needsTheToken_aReadDoesNot() {
    try (ServedShop shop = new ServedShop(guarded(false))) {
      assertThat(shop.get("/api/v1/parts").statusCode()).isEqualTo(200);
      assertThat(shop.post("/api/v1/parts", LINER).statusCode()).isEqualTo(401);
      assertThat(shop.post("/api/v1/parts", LINER, "Authorization", "Bearer x").statusCode())
          .isEqualTo(401);
      assertThat(shop.bench.store.parts()).isEmpty();
      assertThat(shop.post("/api/v1/parts", LINER, "Authorization", "Bearer " + TOKEN).statusCode())
          .isEqualTo(200);
    }
  }

  @Test
  void read_needsTheToken_whereTheShopWishesIt() {
    try (ServedShop shop = new ServedShop(guarded(true))) {
      for (String path : new String[] {"/", "/api/v1/parts", "/metrics", "/live", "/healthz"}) {
        assertThat(shop.get(path).statusCode()).as(path).isEqualTo(401);
      }
      assertThat(shop.get("/api/v1/parts", "Authorization", "Bearer " + TOKEN).statusCode())
          .isEqualTo(200);
      assertThat(shop.get("/enter").statusCode()).isEqualTo(200);
      assertThat(shop.get("/", "Accept", "text/html").headers().firstValue("Location"))
          .contains("/enter?to=%2F");
    }
  }

  @Test
  void browser_thatEntersTheToken_getsAPass_thatScriptsCannotRead() {
    try (ServedShop shop = new ServedShop(guarded(false))) {
      HttpResponse<String> wrong = shop.form("/enter", "token=wrong&to=%2F");
      HttpResponse<String> right = shop.form("/enter", "token=" + TOKEN + "&to=%2Fparts");
      String cookie = right.headers().firstValue("Set-Cookie").orElse("");

      assertThat(wrong.statusCode()).isEqualTo(401);
      assertThat(wrong.headers().firstValue("Set-Cookie")).isEmpty();
      assertThat(right.statusCode()).isEqualTo(303);
      assertThat(right.headers().firstValue("Location")).contains("/parts");
      assertThat(cookie).contains("HttpOnly", "SameSite=Strict").doesNotContain(TOKEN);
      HttpResponse<String> act =
          shop.form("/acts/add", "kind=liner", "Cookie", cookie.replaceFirst(";.*", ""));
      assertThat(act.statusCode()).as(act.body()).isEqualTo(303);
      assertThat(shop.bench.store.parts()).hasSize(1);
    }
  }

  @Test
  void entrance_leadsToThisPageOnly() {
    try (ServedShop shop = new ServedShop(guarded(false))) {
      for (String to : new String[] {"//evil.example", "https://evil.example", "/\\evil.example"}) {
        assertThat(
                shop.form(
                        "/enter",
                        "token="
                            + TOKEN
                            + "&to="
                            + java.net.URLEncoder.encode(
                                to, java.nio.charset.StandardCharsets.UTF_8))
                    .headers()
                    .firstValue("Location"))
            .as(to)
            .contains("/");
      }
    }
  }
}
