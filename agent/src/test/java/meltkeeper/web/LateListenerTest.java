package meltkeeper.web;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static meltkeeper.desk.Bench.HERON;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.SocketException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import meltkeeper.testing.Certificates;
import meltkeeper.web.guard.TokenHash;
import meltkeeper.web.guard.WebSettings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A client that sends its whole body before it reads a word is told all the same. */
final class LateListenerTest {

  private static final int BLOCK_BYTES = 100_000;
  private static final byte[] BLOCK =
      "; nothing to move here, not even a little, and so for long ..... \n"
          .repeat(BLOCK_BYTES / 50)
          .substring(0, BLOCK_BYTES)
          .getBytes(US_ASCII);

  private static final String TOO_LONG = "allowed: at most that";
  private static final String JSON = "application/json";
  private static final String FORM = "application/x-www-form-urlencoded";
  private static final String SAME = "Sec-Fetch-Site: same-origin";
  private static final String PARTS = "/api/v1/parts";

  private static String told(
      ServedShop shop, RawClient client, String line, String type, String header, int megabytes)
      throws IOException {
    shop.hear(HERON, "", "", ServedShop.CLEAR);
    String host = header.startsWith("Host:") ? header : "Host: 127.0.0.1\r\n" + header;
    String before = type.startsWith("multipart") ? HostileTest.FORM : "";
    long length = before.length() + 1_000_000L * megabytes;
    client.send(line + " HTTP/1.1", host, "Content-Type: " + type, "Content-Length: " + length, "");
    client.pour(before.getBytes(US_ASCII), 1);
    client.pour(BLOCK, megabytes * (1_000_000 / BLOCK_BYTES));
    return client.rest();
  }

  @ParameterizedTest
  @CsvSource({
    "POST /api/v1/parts, application/json",
    "POST /api/v1/risk/heron/gcode, text/x-gcode",
    "POST /batch, multipart/form-data; boundary=b",
    "POST /acts/swap, application/x-www-form-urlencoded"
  })
  void tooMuch_isToldSo(String line, String type) throws IOException {
    try (ServedShop shop = new ServedShop();
        RawClient client = new RawClient(shop.port())) {
      assertThat(told(shop, client, line, type, SAME, 100))
          .startsWith("HTTP/1.1 413 ")
          .contains("The body: found more than", TOO_LONG);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "POST /acts/swap, Sec-Fetch-Site: cross-site, 403, allowed: a write from this page itself",
    "POST /api/v1/parts, Host: evil.example, 421, allowed: an address",
    "POST /nowhere, Sec-Fetch-Site: none, 404, Nothing answers POST",
    "PUT /metrics, Sec-Fetch-Site: none, 405, Nothing answers PUT",
    "GET /healthz, Sec-Fetch-Site: none, 200, store"
  })
  void bodyThatNobodyAskedFor_isAnsweredInWords(
      String line, String header, String status, String words) throws IOException {
    try (ServedShop shop = new ServedShop();
        RawClient client = new RawClient(shop.port())) {
      assertThat(told(shop, client, line, FORM, header, 20))
          .startsWith("HTTP/1.1 " + status + " ")
          .contains(words);
    }
  }

  @Test
  void bodyWithoutEnd_isCutOff_andOthersAreServed() throws IOException {
    try (ServedShop shop = new ServedShop();
        RawClient client = new RawClient(shop.port())) {
      assertThatThrownBy(() -> told(shop, client, "POST " + PARTS, JSON, SAME, 2_000))
          .isInstanceOf(SocketException.class);
      assertThat(shop.get("/healthz").statusCode()).isEqualTo(200);
    }
  }

  @Test
  void longWriteWithoutToken_isToldSo() throws IOException {
    WebSettings guarded =
        new WebSettings(
            "127.0.0.1",
            0,
            Set.of(),
            Optional.of(TokenHash.of(TokenHash.freshToken(new SecureRandom()))),
            false,
            Optional.empty());
    try (ServedShop shop = new ServedShop(guarded);
        RawClient client = new RawClient(shop.port())) {
      assertThat(told(shop, client, "POST " + PARTS, JSON, SAME, 20))
          .startsWith("HTTP/1.1 401 ")
          .contains("found no token that is known here");
    }
  }

  @Test
  void tooMuchOverTls_isToldSo(@TempDir Path folder) throws Exception {
    Certificates made = new Certificates(folder).issue("IP:127.0.0.1");
    try (ServedShop shop = new ServedShop(ServedShop.encrypted(folder));
        RawClient client = new RawClient(shop.port(), made.client().getSocketFactory())) {
      assertThat(told(shop, client, "POST " + PARTS, JSON, SAME, 100))
          .startsWith("HTTP/1.1 413 ")
          .contains(TOO_LONG);
    }
  }
}
