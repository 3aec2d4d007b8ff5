package meltkeeper.desk;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.time.Instant;

/** Prints answers as JSON, the same for the command line and the API. Safe for any thread. */
public final class AnswerJson {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .addModule(new SimpleModule().addSerializer(Instant.class, ToStringSerializer.instance))
          .propertyNamingStrategy(PropertyNamingStrategies.SNAKE_CASE)
          .enable(JsonGenerator.Feature.WRITE_BIGDECIMAL_AS_PLAIN)
          .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
          .build();

  private AnswerJson() {}

  /** One line of JSON, its keys in snake case, an absent value as null. */
  public static String print(Object answer) {
    try {
      return MAPPER.writeValueAsString(answer);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(
          "a bug in Meltkeeper: " + answer.getClass() + " cannot be printed", e);
    }
  }
}
