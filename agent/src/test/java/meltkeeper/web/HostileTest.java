package meltkeeper.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static meltkeeper.desk.Bench.HERON;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import meltkeeper.desk.Bench;
import meltkeeper.jam.Level;
import meltkeeper.jam.Outlook;
import meltkeeper.store.Alert;
import meltkeeper.store.AlertTopic;
import meltkeeper.store.Episode;
import meltkeeper.store.Posting;
import meltkeeper.store.Subject;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What nobody means well by: none of it gets through, and the others are served meanwhile. */
final class HostileTest {

  private static final String SCRIPT = "<script>alert('x')</script>";
  private static final String IMAGE = "\"><img src=x onerror=alert(1)>";
  static final String FORM =
      """
      --b\r
      Content-Disposition: form-data; name="printer"\r
      \r
      heron\r
      --b\r
      Content-Disposition: form-data; name="gcode"; filename="a.gcode"\r
      \r
      """;
  private static final List<byte[]> HUNDRED_MEGABYTES =
      Collections.nCopies(
          1_000, ("; nothing to move here ".repeat(4) + "...... \n").repeat(1_000).getBytes(UTF_8));

  private final ServedShop shop = new ServedShop();

  @AfterEach
  void close() {
    shop.close();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/",
        "/printers/heron",
        "/parts",
        "/parts/L-001",
        "/kinds",
        "/alerts",
        "/labels",
        "/batch?printer=%22%3E%3Cscript%3Ealert('x')%3C/script%3E",
        "/?find=%22%3E%3Cscript%3Ealert('x')%3C/script%3E",
        "/parts?find=%22%3E%3Cscript%3Ealert('x')%3C/script%3E",
        "/parts/%3Cscript%3Ealert('x')%3C%2Fscript%3E",
        "/printers/%3Cscript%3Ealert('x')%3C%2Fscript%3E",
        "/%3Cscript%3Ealert('x')%3C%2Fscript%3E",
        "/enter?to=%22%3E%3Cscript%3Ealert('x')%3C/script%3E"
      })
  void scriptInNames_isShown_neverRun(String path) {
    shop.hear(
        HERON,
        SCRIPT,
        IMAGE,
        new Outlook(
            Level.NARROWING,
            ServedShop.NARROWING.evidence(),
            SCRIPT,
            Optional.empty(),
            Optional.empty()));
    String id = shop.bench.add("liner");
    shop.bench.fit(id, HERON, "2026-03-09T00:00:00Z");
    Episode episode = new Episode(AlertTopic.JAM_STALLED, new Subject.OfHotEnd(HERON), Bench.NOW);
    shop.bench
        .store
        .outbox()
        .post(
            List.of(
                new Posting(
                    new Alert(episode, Alert.Phase.BEGAN, 0, Bench.NOW, SCRIPT), List.of())));

    HttpResponse<String> page = shop.get(path, "Accept", "text/html");

    assertThat(page.body()).doesNotContain("<script>alert", "<img src=x", "x onerror=alert(1)>");
    assertThat(page.headers().firstValue("Content-Security-Policy").orElse(""))
        .contains("default-src 'none'", "script-src 'self'")
        .doesNotContain("unsafe");
  }

  @ParameterizedTest
  @ValueSource(strings = {"evil.example", "evil.example:8266", "127.0.0.1.evil.example", ""})
  void otherHost_isTurnedAway(String host) throws IOException {
    String answer = RawClient.ask(shop.port(), "GET /api/v1/parts HTTP/1.1", host);

    assertThat(answer).startsWith("HTTP/1.1 4").doesNotContain("\"parts\"");
  }

  @ParameterizedTest
  @CsvSource({
    "application/json,Origin,http://evil.example",
    "application/json,Origin,null",
    "application/json,Sec-Fetch-Site,cross-site",
    "application/json,Sec-Fetch-Site,same-site",
    "application/x-www-form-urlencoded,Sec-Fetch-Site,cross-site",
    "application/x-www-form-urlencoded,X-Nothing,said",
    "text/plain,X-Nothing,said",
    "multipart/form-data; boundary=b,X-Nothing,said"
  })
  void postFromAnotherSite_isTurnedAway_andChangesNothing(String type, String name, String value) {
    for (String path : List.of("/api/v1/parts", "/acts/add")) {
      HttpResponse<String> answer =
          shop.send(
              shop.request(path, "Content-Type", type, name, value)
                  .POST(BodyPublishers.ofString("{\"kind\":\"liner\"}"))
                  .build());

      assertThat(answer.statusCode()).as(path).isEqualTo(403);
    }
    assertThat(shop.bench.store.parts()).isEmpty();
  }

  @Test
  void hundredMegabytes_areRefused_everywhere() {
    shop.hear(HERON, "", "", ServedShop.CLEAR);

    assertThat(big("/api/v1/parts", "application/json").statusCode()).isEqualTo(413);
    assertThat(big("/api/v1/risk/heron/gcode", "text/x-gcode").statusCode()).isEqualTo(413);
    assertThat(big("/batch", "multipart/form-data; boundary=b").statusCode()).isEqualTo(413);
    assertThat(big("/acts/swap", "application/x-www-form-urlencoded").statusCode()).isEqualTo(413);
    assertThat(shop.get("/healthz").statusCode()).isEqualTo(200);
  }

  private HttpResponse<String> big(String path, String type) {
    return shop.send(
        shop.request(path, "Content-Type", type, "Sec-Fetch-Site", "same-origin")
            .POST(
                BodyPublishers.concat(
                    BodyPublishers.ofString(type.startsWith("multipart") ? FORM : ""),
                    BodyPublishers.ofByteArrays(HUNDRED_MEGABYTES)))
            .build());
  }

  @Test
  void clientsThatStopHalfWay_delayNobody_andAreLetGo() throws IOException {
    List<RawClient> slow = new ArrayList<>();
    try {
      for (int i = 0; i < 100; i++) {
        slow.add(new RawClient(shop.port()).send("GET / HTTP/1.1", "Host: 127.0.0.1"));
        slow.add(
            new RawClient(shop.port())
                .send(
                    "POST /api/v1/parts HTTP/1.1",
                    "Host: 127.0.0.1",
                    "Content-Type: application/json",
                    "Content-Length: 1000",
                    "",
                    "{"));
      }
      assertThat(shop.get("/healthz").statusCode()).isEqualTo(200);
      assertThat(shop.get("/", "Accept", "text/html").statusCode()).isEqualTo(200);
      assertThat(slow.get(0).rest()).doesNotContain("200 OK");
      assertThat(slow.get(1).rest()).doesNotContain("200 OK");
      assertThat(shop.bench.store.parts()).isEmpty();
    } finally {
      for (RawClient client : slow) {
        client.close();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/../../../../etc/passwd",
        "/assets/../../../../etc/passwd",
        "/assets/%2e%2e/%2e%2e/etc/passwd",
        "/assets/..%2f..%2f..%2fetc%2fpasswd",
        "/assets/..;/..;/etc/passwd",
        "//etc/passwd",
        "/parts/..%2f..%2fetc%2fpasswd",
        "/parts/%00",
        "/assets/page.css%00.html",
        "/assets/texts.properties",
        "/assets/",
        "/WEB-INF/web.xml",
        "/META-INF/MANIFEST.MF",
        "http://evil.example/",
        "/%",
        "/%zz"
      })
  void pathTricks_leadNowhere(String path) throws IOException {
    String answer = RawClient.ask(shop.port(), "GET " + path + " HTTP/1.1", "127.0.0.1");

    assertThat(answer)
        .startsWith("HTTP/1.1 4")
        .doesNotContain("root:", "menu.skip", "Manifest-Version");
  }

  @Test
  void bugsOfOurs_tellNoInsides() {
    HttpResponse<String> answer = shop.get("/api/v1/parts?most=99999999999");

    assertThat(answer.statusCode()).isEqualTo(422);
    assertThat(answer.body()).doesNotContain("Exception", "meltkeeper.");
    assertThat(answer.headers().firstValue("Server")).isEmpty();
  }
}
