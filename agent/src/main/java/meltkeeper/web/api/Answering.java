package meltkeeper.web.api;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import meltkeeper.desk.AnswerJson;

/** Writes answers, each with an ETag (RFC 9110 section 8.8.3) of its content. */
public final class Answering {

  private static final int TAG_BYTES = 12;

  private Answering() {}

  /** Answers a question, or says that nothing has changed since it was asked last. */
  public static void answer(Context request, Object answer) {
    answerText(request, "application/json", AnswerJson.print(answer));
  }

  /** The same, for a text that is JSON already. */
  static void answerText(Context request, String type, String text) {
    String tag = tag(text);
    request.header("ETag", tag);
    request.header("Cache-Control", "no-cache");
    if (asked(request).contains(tag)) {
      request.status(304);
    } else {
      request.contentType(type).result(text);
    }
  }

  /** Says what is wrong. */
  public static void tell(Context request, Problem problem) {
    request
        .status(problem.status())
        .contentType(Problem.CONTENT_TYPE)
        .result(AnswerJson.print(problem));
  }

  private static List<String> asked(Context request) {
    return Optional.ofNullable(request.header("If-None-Match")).stream()
        .flatMap(tags -> List.of(tags.split(",")).stream())
        .map(tag -> tag.strip().replaceFirst("^W/", ""))
        .toList();
  }

  private static String tag(String text) {
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return "\"" + HexFormat.of().formatHex(digest, 0, TAG_BYTES) + "\"";
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
