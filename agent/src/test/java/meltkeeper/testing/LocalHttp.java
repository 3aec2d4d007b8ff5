package meltkeeper.testing;

import java.io.IOException;
import java.io.InputStream;
import java.net.HttpURLConnection;
import java.net.URI;
import java.nio.charset.StandardCharsets;

/** Asks a server on a port of the loopback interface, and keeps no thread for it. */
public record LocalHttp(int port) {

  private static final int PATIENCE_MILLIS = 20_000;
  private static final int OK = 200;

  /** The text at that path; any status but 200 is an error that tells the answer. */
  public String get(String path) throws IOException {
    HttpURLConnection connection =
        (HttpURLConnection) URI.create("http://127.0.0.1:" + port + path).toURL().openConnection();
    try {
      connection.setConnectTimeout(PATIENCE_MILLIS);
      connection.setReadTimeout(PATIENCE_MILLIS);
      connection.setRequestProperty("Connection", "close");
      int status = connection.getResponseCode();
      try (InputStream body =
          status == OK ? connection.getInputStream() : connection.getErrorStream()) {
        String text = body == null ? "" : new String(body.readAllBytes(), StandardCharsets.UTF_8);
        if (status != OK) {
          throw new IOException(path + " answered " + status + ": " + text);
        }
        return text;
      }
    } finally {
      connection.disconnect();
    }
  }

  /** Whether that path answers 200 now. */
  public boolean answers(String path) {
    try {
      get(path);
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
