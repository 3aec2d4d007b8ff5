package meltkeeper.store.sql;

import com.fasterxml.jackson.annotation.JsonAutoDetect.Visibility;
import com.fasterxml.jackson.annotation.PropertyAccessor;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.sql.SQLDataException;
import java.util.Optional;
import meltkeeper.ledger.Account;
import meltkeeper.protocol.HotEnd;

/**
 * An account as JSON: the components of its records, by name. Reading is strict, so that an account
 * of another shape fails instead of being half understood; a change of shape needs a migration.
 */
final class AccountJson {

  private static final ObjectMapper MAPPER =
      JsonMapper.builder()
          .addModule(new Jdk8Module())
          .visibility(PropertyAccessor.ALL, Visibility.NONE)
          .visibility(PropertyAccessor.FIELD, Visibility.ANY)
          .visibility(PropertyAccessor.CREATOR, Visibility.ANY)
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  private AccountJson() {}

  static String written(Account account) throws SQLDataException {
    return written((Object) account, account.hotEnd());
  }

  static Account read(HotEnd hotEnd, String json) throws SQLDataException {
    return read(Account.class, hotEnd, json);
  }

  static String written(Object state, HotEnd hotEnd) throws SQLDataException {
    try {
      return MAPPER.writeValueAsString(state);
    } catch (JsonProcessingException e) {
      throw unusable(hotEnd, "cannot be written", e);
    }
  }

  static <T> T read(Class<T> type, HotEnd hotEnd, String json) throws SQLDataException {
    try {
      return Optional.ofNullable(MAPPER.readValue(json, type))
          .orElseThrow(() -> new SQLDataException("the account of hot end " + hotEnd + " is null"));
    } catch (JsonProcessingException e) {
      throw unusable(hotEnd, "is unreadable", e);
    }
  }

  private static SQLDataException unusable(HotEnd hotEnd, String how, Exception cause) {
    return new SQLDataException("the account of hot end " + hotEnd + " " + how, cause);
  }
}
