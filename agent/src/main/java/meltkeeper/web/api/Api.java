package meltkeeper.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;
import meltkeeper.web.view.AgentView;

/** The API under the page: the same nouns as the commands, as JSON. */
public final class Api {

  private static final String DOCUMENT = "openapi.yaml";

  private final AgentView agent;
  private final String document = document();

  public Api(AgentView agent) {
    this.agent = agent;
  }

  /** Serves all of it. */
  public void serve(RoutesConfig routes) {
    new ApiReads(agent).serve(routes);
    new ApiWrites(agent).serve(routes);
    new ApiRisk(agent).serve(routes);
    routes.get(
        "/api/v1/openapi.json",
        request -> Answering.answerText(request, "application/json", document));
  }

  /** The OpenAPI document, which is kept as YAML and served as JSON. */
  private static String document() {
    try (InputStream yaml =
        Objects.requireNonNull(Api.class.getResourceAsStream(DOCUMENT), DOCUMENT)) {
      JsonNode tree = new ObjectMapper(new YAMLFactory()).readTree(yaml);
      return new ObjectMapper().writeValueAsString(tree);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
